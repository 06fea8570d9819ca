import { toRad } from '../../earth/angles.ts';

/** No van's front wheels turn farther, and none so little, taken as one wheel in the middle. Degrees; the usual lock is 37°. */
const LOCK_MOST_DEG = 60;
const LOCK_LEAST_DEG = 20;

/** What the rear axle's radius at full lock can be. Metres. */
export function believedRadii(wheelbaseM: number): { readonly leastM: number; readonly mostM: number } {
  return {
    leastM: wheelbaseM / Math.tan(toRad(LOCK_MOST_DEG)),
    mostM: wheelbaseM / Math.tan(toRad(LOCK_LEAST_DEG)),
  };
}

/**
 * Whether a turning circle cannot be: one too small for the wheelbase, most often a radius read as a diameter, would
 * let the vehicle round every corner. Metres; `aheadM` from the rear axle to what runs on the circle.
 */
export function isCircleTooSmall({
  circleM,
  aheadM,
  wheelbaseM,
}: {
  readonly circleM: number;
  readonly aheadM: number;
  readonly wheelbaseM: number;
}): boolean {
  const rearAxleM = Math.sqrt(Math.max(0, (circleM / 2) ** 2 - aheadM ** 2));
  return rearAxleM < believedRadii(wheelbaseM).leastM;
}
