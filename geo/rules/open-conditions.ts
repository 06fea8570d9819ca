import type { Wants } from '../report/kinds.ts';
import type { Level } from '../report/level.ts';
import type { OpenCondition, Tagged } from '../tags/resolve.ts';

type Open = readonly Pick<OpenCondition<Tagged>, 'understood' | 'unreadable' | 'wants'>[];

/**
 * The level of a place where conditions are open. Certain is only what every case comes to; what at the worst asks for
 * care is no more than that; all else is unknown.
 * @param cases the level of each value the tags may have, undefined: it leaves the vehicle free
 */
export function levelWhenOpen(cases: readonly (Level | undefined)[], open: Open): Level {
  if (open.some(({ unreadable }) => unreadable)) return 'unknown';
  const [first] = cases;
  if (first !== undefined && cases.every((each) => each === first)) return first;
  return cases.every((each) => each === undefined || each === 'care') ? 'care' : 'unknown';
}

/** What settles conditions that are open together: more than a time, where one of them asks for more. */
export function wantsOf(open: Open): Wants {
  return (open.find(({ wants }) => wants !== 'time') ?? open[0])?.wants ?? 'sign';
}

/**
 * What to do where it is open whether something holds.
 * @param otherwise where more than a time or a sign is wanted
 */
export function adviseOpen(open: Open, otherwise: string): string {
  if (open.every(({ wants }) => wants === 'time')) return 'Give a leave time, or pass outside these hours.';
  return open.every(({ understood }) => understood) ? 'Look for the sign, and mind what it asks.' : otherwise;
}
