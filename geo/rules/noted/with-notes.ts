import { type Draft, mergeNeighbours } from '../finding.ts';
import type { RuleInput } from '../rule.ts';
import { endOf } from '../run.ts';
import { addedDrafts, careDraft } from './added.ts';
import { type FigureHeld, holdFigures } from './hold-figure.ts';
import { answers, askedOf, type NoteAsked } from './meets.ts';
import { notesOnDrive } from './notes-on-drive.ts';
import { sayAllowed, sayBeside } from './say-held.ts';
import { settle } from './settle.ts';

/**
 * What the rules said, with what the firm knows: figures settle what was unknown, stand beside what is mapped and never
 * undo it, and add the limits that the map lacks; leave that the firm has settles what asks for it,
 * and words stand beside what they answer, or as a care of their own.
 */
export function withNotes(input: RuleInput, drafts: readonly Draft[]): Draft[] {
  const { met: passed } = notesOnDrive(input.drive, input.roads, input.localNotes ?? []);
  if (passed.length === 0) return [...drafts];
  const merged = mergeNeighbours(drafts);
  const met = askedOf(passed, merged);
  const figures = holdFigures(input, met);
  const used = new Set<NoteAsked | FigureHeld>();
  const said = merged.map((draft) => {
    const settled = settle(input, draft, figures);
    for (const one of settled.used) used.add(one);
    return answered(allowed(settled.draft, met, used), met, used);
  });
  const words = met.filter((one) => isWordsAlone(one) && !used.has(one));
  const all = [
    ...said,
    ...addedDrafts(
      input,
      figures,
      figures.filter((one) => !used.has(one)),
    ),
    ...words.map(careDraft),
  ];
  return all.map((draft) => onGuessed(input, draft));
}

/** What a note makes of a road that may not be the driven one says so. */
function onGuessed({ drive }: RuleInput, draft: Draft): Draft {
  const { note, wants, run, say } = draft;
  if (note === undefined || wants === 'route') return draft;
  const middleM = (run[0].fromM + endOf(run)) / 2;
  const isGuessed = [...drive.guessed, ...drive.doubtful].some(
    ({ fromM, toM }) => fromM <= middleM && middleM <= toM,
  );
  if (!isGuessed) return draft;
  return { ...draft, say: `${say} ${IF_DRIVEN}` };
}

const IF_DRIVEN =
  'Which road is driven here is guessed, since the points of the drive lie far apart or beside it: the note counts only if it is this one.';

function isWordsAlone({ note }: NoteAsked): boolean {
  return note.heightM === undefined && note.widthM === undefined && note.massKg === undefined;
}

/** Where leave is asked for, the firm's word that it has it settles the finding that it was noted for. */
function allowed(draft: Draft, met: readonly NoteAsked[], used: Set<NoteAsked | FigureHeld>): Draft {
  const { level, wants, limit } = draft;
  if (level !== 'unknown' || wants !== 'permission' || limit !== undefined) return draft;
  const one = met.find((each) => each.note.leave === true && answers(each, draft));
  if (one === undefined) return draft;
  used.add(one);
  const { wants: _, folded: __, ...rest } = draft;
  return { ...rest, level: 'care', note: one.note.id, ...sayAllowed(draft.say, one.note) };
}

/**
 * A finding that notes without a figure answer: it stays what it is, with the firm's words. One that is folded away is
 * not read by everyone: there the words are told by themselves.
 */
function answered(draft: Draft, met: readonly NoteAsked[], used: Set<NoteAsked | FigureHeld>): Draft {
  if (draft.folded === true) return draft;
  const words = met.filter((one) => isWordsAlone(one) && answers(one, draft) && !used.has(one));
  const [first] = words;
  if (first === undefined) return draft;
  for (const one of words) used.add(one);
  const say = words.reduce((text, { note }) => sayBeside(text, note), draft.say);
  return { ...draft, say, note: draft.note ?? first.note.id };
}
