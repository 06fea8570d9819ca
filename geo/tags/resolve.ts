import { hoursHold, UNREADABLE_HOURS } from '../clock/hours.ts';
import type { LocalMoment, WallTime } from '../clock/moment.ts';
import { given } from '../given.ts';
import type { Clause, Conditional, Part } from './conditional/conditional.ts';
import type { ConditionContext } from './conditional/context.ts';
import { evaluateConditional, type Judgement } from './conditional/evaluate.ts';
import { conditionHolds } from './conditional/holds.ts';
import { nextValueChange } from './conditional/next-change.ts';
import { parseConditional } from './conditional/parse.ts';

/** A key and its value, as mapped. */
export interface Tagged {
  readonly key: string;
  readonly text: string;
}

/** One value a tag may have there and then. */
export interface Possible<T extends Tagged> {
  /** undefined: nothing is tagged */
  readonly value: string | undefined;
  /** the tag it comes from; undefined where nothing is tagged */
  readonly from: T | undefined;
  /** the clause that holds, for a value under a condition */
  readonly clause?: Clause;
}

/**
 * What would settle a condition: the time of passing, the sign that stands there, leave from whoever grants it, or a
 * figure that the vehicle card lacks.
 */
export type ConditionWants = 'time' | 'sign' | 'permission' | 'measure';

/** A condition that is not settled for this vehicle, there and then. */
export interface OpenCondition<T extends Tagged> {
  readonly tag: T;
  readonly why: string;
  /** only the hour or the weather is missing; false: it hangs on something else, or cannot be made out */
  readonly understood: boolean;
  /** no clause of it could be told apart: it may set any value */
  readonly unreadable: boolean;
  readonly wants: ConditionWants;
}

/** The value of a tag and its `:conditional` forms, for one vehicle, there and then. */
export interface Resolved<T extends Tagged> {
  /** one entry when settled, which it is when `open` is empty */
  readonly possible: readonly Possible<T>[];
  readonly open: readonly OpenCondition<T>[];
  /** what the value becomes with the clock, and when, on the place's own clock */
  readonly next?: { readonly at: WallTime; readonly value: string | undefined; readonly tag: T };
}

/**
 * Resolves a tag: each condition that applies replaces what less specific tags say, one that does not leaves it.
 * @param plain the tag without `:conditional`, undefined where there is none
 * @param conditionals from the least to the most specific
 * @param contextsFor what decides a condition of this tag: one context, or two where the vehicle comes and goes at
 * different minutes; both must agree
 */
export function resolveTag<T extends Tagged>(
  plain: T | undefined,
  conditionals: readonly T[],
  contextsFor: (tag: T) => readonly ConditionContext[],
): Resolved<T> {
  let possible: Possible<T>[] = [{ value: plain?.text, from: plain }];
  const open: OpenCondition<T>[] = [];
  let next: Resolved<T>['next'];
  for (const tag of conditionals) {
    const parsed = parseConditional(tag.text);
    if (!parsed.ok) {
      const why = `cannot be read (${parsed.error.reason})`;
      open.push({ tag, why, understood: false, unreadable: true, wants: 'sign' });
      continue;
    }
    const contexts = contextsFor(tag);
    const judged = judge(parsed.value, contexts);
    const before = possible;
    if (judged.settled) {
      if (judged.value !== undefined)
        possible = [{ value: judged.value, from: tag, ...(judged.clause && { clause: judged.clause }) }];
      const change = nextChange(parsed.value, contexts);
      if (change !== undefined) next = { at: change.at, value: change.value ?? before[0]?.value, tag };
      continue;
    }
    possible = judged.possible.flatMap((value) => (value === undefined ? before : [{ value, from: tag }]));
    open.push({ tag, why: judged.why, unreadable: false, ...whatIsMissing(parsed.value, contexts) });
    next = undefined;
  }
  return { possible, open, ...given({ next }) };
}

/** A settled condition of one value all the while the vehicle is there, or what it may be. */
function judge(conditional: Conditional, contexts: readonly ConditionContext[]): Judgement {
  const judged = contexts.map((context) => evaluateConditional(conditional, context));
  const [first] = judged;
  const last = judged.at(-1);
  if (first === undefined || last === undefined) return evaluateConditional(conditional, { vehicle: {} });
  if (!first.settled) return first;
  if (!last.settled) return last;
  if (first.value === last.value) return first;
  return {
    settled: false,
    possible: [first.value, last.value],
    why: 'the hours change while the vehicle is there',
  };
}

function nextChange(conditional: Conditional, contexts: readonly ConditionContext[]) {
  const last = contexts.at(-1);
  return last === undefined ? undefined : nextValueChange(conditional, last);
}

/** A Wednesday noon: hours that cannot be read on it cannot be read at all. */
const ANY_MOMENT: LocalMoment = {
  year: 2026,
  month: 6,
  day: 17,
  hour: 12,
  minute: 0,
  weekday: 3,
  zone: 'Etc/UTC',
  offsetMinutes: 0,
};

function leavesOf(parts: readonly Part[]): Part[] {
  return parts.flatMap((part) => ('of' in part && part.kind !== 'all-or-any' ? leavesOf(part.of) : [part]));
}

/** What would settle a part that does not hold for certain, hours apart. */
const WANTS: Partial<Record<Part['kind'], ConditionWants>> = { purpose: 'permission', compare: 'measure' };

/** What an open condition hangs on. */
function whatIsMissing(
  conditional: Conditional,
  contexts: readonly ConditionContext[],
): Pick<OpenCondition<Tagged>, 'understood' | 'wants'> {
  const leaves = conditional.clauses.flatMap((clause) => leavesOf(clause.parts));
  let strange: Part | undefined;
  let timeMissing = false;
  for (const leaf of leaves)
    for (const context of contexts) {
      if (conditionHolds([leaf], context).is !== 'unknown') continue;
      const readableHours =
        leaf.kind === 'hours' && hoursHold(leaf.text, ANY_MOMENT, context.place) !== UNREADABLE_HOURS;
      if (readableHours && context.moment === undefined) timeMissing = true;
      else if (leaf.kind !== 'circumstance') strange ??= leaf;
    }
  if (strange !== undefined) return { understood: false, wants: WANTS[strange.kind] ?? 'sign' };
  return { understood: true, wants: timeMissing ? 'time' : 'sign' };
}
