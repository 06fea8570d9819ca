import { toRad } from '../earth/angles.ts';

/** No van's front wheels turn farther, taken as one wheel in the middle. Degrees; the usual lock is 37°. */
const LOCK_MOST_DEG = 60;

/**
 * What is wrong with a turning circle: one too small for the wheelbase, most often a radius read as a diameter, would
 * let the vehicle round every corner. Metres.
 * @param aheadM from the rear axle to what runs on the circle @returns undefined where it can be
 */
export function circleFault(circleM: number, aheadM: number, wheelbaseM: number): string | undefined {
  const rearAxleM = Math.sqrt(Math.max(0, (circleM / 2) ** 2 - aheadM ** 2));
  if (rearAxleM >= wheelbaseM / Math.tan(toRad(LOCK_MOST_DEG))) return undefined;
  return `${circleM} m is too small for a wheelbase of ${wheelbaseM} m; give the whole width of the circle, not its radius`;
}
