import type { Draft } from '../finding.ts';
import type { RuleInput } from '../rule.ts';
import { endOf } from '../run.ts';
import type { Words } from '../words.ts';
import { type FigureHeld, figureTold } from './hold-figure.ts';
import type { NoteMet } from './notes-on-drive.ts';
import { sayAlone, sayHeld, sayOthers } from './say-held.ts';

/**
 * The limits that notes add to the map. Where two of one quantity hold, the lower is told; one that leaves the vehicle
 * free is folded.
 * @param left figures that nothing was settled by
 */
export function addedDrafts(
  input: RuleInput,
  figures: readonly FigureHeld[],
  left: readonly FigureHeld[],
): Draft[] {
  return left
    .filter((one) => !figures.some((other) => isLowerThere(other, one)))
    .map(
      (held): Draft => ({
        subject: held.figure.subject,
        kind: 'measured',
        run: held.run,
        aspect: held.note.id,
        at: held.note.at,
        tags: {},
        ...figureTold(held),
        ...wordsOf(held, input, left),
      }),
    );
}

/** With what the notes say that give way to it. */
function wordsOf(held: FigureHeld, input: RuleInput, left: readonly FigureHeld[]): Words {
  const { say, advice } = sayHeld(held, input);
  return {
    say: sayOthers(
      say,
      left.filter((one) => isLowerThere(held, one)),
      held,
    ),
    advice,
  };
}

/** Of two figures that hold at one place the lower does; of equals the first noted. */
function isLowerThere(other: FigureHeld, one: FigureHeld): boolean {
  if (other === one || other.figure.subject !== one.figure.subject) return false;
  const middleM = (one.run[0].fromM + endOf(one.run)) / 2;
  if (other.run[0].fromM > middleM || endOf(other.run) < middleM) return false;
  if (other.figure.value !== one.figure.value) return other.figure.value < one.figure.value;
  return other.note.id < one.note.id;
}

/** The firm's words on a place, where nothing else is said of it that they answer. */
export function careDraft({ note, run }: NoteMet): Draft {
  return {
    subject: 'note',
    kind: 'care',
    level: 'care',
    run,
    aspect: note.id,
    note: note.id,
    at: note.at,
    tags: {},
    ...sayAlone(note),
  };
}
