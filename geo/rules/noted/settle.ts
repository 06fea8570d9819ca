import type { Draft } from '../finding.ts';
import type { RuleInput } from '../rule.ts';
import { endOf } from '../run.ts';
import { type FigureHeld, figureTold, isWorse, lowest } from './hold-figure.ts';
import { answers, meets } from './meets.ts';
import { sayBesideLimit, sayHeld, sayOthers } from './say-held.ts';

/** A draft after the figures noted there, and those of them that are told with it. */
interface Settled {
  readonly draft: Draft;
  readonly used: readonly FigureHeld[];
}

/** Rounding of places along a drive. Metres. */
const SAME_PLACE_M = 0.5;

/**
 * What a rule said of a place where figures were measured. What was unknown for want of a figure becomes what the
 * lowest makes it; what is mapped stays, however much was measured there.
 */
export function settle(input: RuleInput, draft: Draft, figures: readonly FigureHeld[]): Settled {
  if (isOpen(draft)) {
    const there = figures.filter((one) => isAbout(one, draft) && coversOrAnswers(one, draft));
    const low = lowest(there);
    if (low === undefined) return { draft, used: [] };
    const settled = settledBy(input, draft, low);
    return { draft: { ...settled, say: sayOthers(settled.say, there, low) }, used: there };
  }
  if (!isMappedLimit(draft)) return { draft, used: [] };
  const there = figures.filter((one) => isAbout(one, draft) && meets(one, draft));
  const low = lowest(there);
  if (low === undefined) return { draft, used: [] };
  const milder = low.figure.value > (draft.limit?.value ?? 0);
  const say = sayOthers(sayBesideLimit(draft.say, low, milder ? 'milder' : 'no milder'), there, low);
  return {
    draft: { ...draft, say, note: low.note.id },
    // one that means worse than what is mapped is told by itself as well
    used: there.filter((one) => !isWorse(one, draft.level)),
  };
}

/** Nobody mapped a figure that can be counted with; hours and permissions are not settled by a tape. */
function isOpen({ level, wants }: Draft): boolean {
  return level === 'unknown' && (wants === 'sign' || wants === 'measure');
}

function isMappedLimit({ level, limit }: Draft): boolean {
  return limit !== undefined && (level === 'barred' || level === 'tight');
}

/** Whether a figure is of the quantity that a draft is about. */
function isAbout({ figure }: FigureHeld, { subject, kind, wants }: Draft): boolean {
  if (subject !== 'barrier') return subject === figure.subject;
  if (figure.subject === 'height') return kind === 'height bar';
  return (
    figure.subject === 'width' && (kind === 'width bar' || (kind !== 'height bar' && wants === 'measure'))
  );
}

/** Measured all along what is unknown; or measured for it, which is for whoever did to know. */
function coversOrAnswers(one: FigureHeld, draft: Draft): boolean {
  const [fromM, toM] = [draft.run[0].fromM, endOf(draft.run)];
  if (one.run[0].fromM <= fromM + SAME_PLACE_M && endOf(one.run) >= toM - SAME_PLACE_M) return true;
  return answers(one, draft);
}

function settledBy(input: RuleInput, draft: Draft, held: FigureHeld): Draft {
  const { wants: _, ...rest } = draft;
  return { ...rest, ...figureTold(held), ...sayHeld(held, input) };
}
