import type { Tags } from '../../roads/roads.ts';
import { RANK, rankOf } from '../../tags/road-class.ts';

/**
 * What a road costs beyond the seconds it takes: one table. All figures are judgement, start values; a bar is no price:
 * what is barred is absent, since a very large number would one day be taken.
 */
export const PRICES = {
  /** seconds a finding of this level is worth going round for, once where it is met */
  tightS: 120,
  /** a gap nobody has measured, a gate that may be shut, a permission nobody gave */
  unknownS: 240,
  /** what the checker folds away weighs nothing */
  foldedS: 0,
  /** narrower than 3 m, or one lane for both directions: meeting traffic means backing up. Times the seconds */
  narrowTimes: 1.4,
  /** mapped as soft, or a track: slow and easily stuck. Times the seconds */
  softTimes: 2,
  /** a ford, a climb near the vehicle's end: doubt each time it is met */
  fordOrSteepS: 120,
  /** a corner that takes the other lane on the exit */
  otherLaneS: 10,
  /** a corner that takes the whole road */
  wholeRoadS: 30,
  /** a corner that takes backing up */
  shuntS: 120,
  /** the tail swings out of its lane */
  swingS: 10,
  /** turning off one road into another: slowing down, giving way */
  turnS: 4,
  /** turning across the oncoming lane: waiting for a gap */
  acrossS: 8,
  /** turning round where there is room */
  turnRoundS: 60,
  /** getting on a ferry: waiting and boarding. Our guess */
  boardFerryS: 1200,
} as const;

/** What counts more: the time, or roads made for large vehicles. */
export type Prefer = 'quickest' | 'widest';

/** How much dearer a second on a lesser road is to who prefers wide ones. Judgement. */
const WIDEST_TIMES: readonly (readonly [rank: number, times: number])[] = [
  [RANK.secondary, 1],
  [RANK.tertiary, 1.3],
  [RANK.residential, 1.8],
];
const WIDEST_TIMES_LEAST = 2.5;

/** What one second on a road counts, by its class. */
export function timesOfClass(tags: Tags, prefer: Prefer): number {
  if (prefer === 'quickest') return 1;
  const rank = rankOf(tags['highway']);
  return WIDEST_TIMES.find(([most]) => rank <= most)?.[1] ?? WIDEST_TIMES_LEAST;
}
