import { computed, signal } from '@preact/signals';
import { driveTogether } from '../../geo/report/ways/ways-by-bar.ts';
import type { ValueOf } from '../../main/contract/calls.ts';
import type { Doing } from './happening.ts';

export type WaysFound = ValueOf<'wayRound'>;

/** Ways round that were asked for: of the findings named, or of all that bars the drive. */
export interface WaysAsked {
  /** undefined: past all that bars the drive */
  readonly past: string | undefined;
  /** while they are looked for */
  readonly doing?: Doing;
  readonly found?: WaysFound;
  /** why nobody could look */
  readonly problem?: string;
}

/** The ways that are shown; one question at a time. */
export const ways = signal<WaysAsked | undefined>(undefined);

/** The one that is looked at, by its place among the ways found; undefined: those that would be driven together. */
export const lookedAt = signal<number | undefined>(undefined);

/** The ways as they were told; none while nothing is shown. */
export const waysFound = computed(() => ways.value?.found?.waysRound ?? []);

/** The ways that stand out on map and strip, by their places among those found. */
export const raisedWays = computed<readonly number[]>(() => {
  const found = waysFound.value;
  const one = lookedAt.value;
  if (one !== undefined && one < found.length) return [one];
  return ways.value?.past === undefined ? driveTogether(found) : found.length > 0 ? [0] : [];
});
