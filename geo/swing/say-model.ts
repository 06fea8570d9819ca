import { shortIn, type Units } from '../units/in-units.ts';
import type { FullLock, LockSource } from '../vehicle/lock/full-lock.ts';

/** How far the real vehicle may be off what is worked out. Metres. */
const OFF_M = 0.05;

/** What the figures rest on; said wherever they stand. */
export function sayModel({ from }: Pick<FullLock, 'from'>, units: Units): string {
  const rests =
    from === 'measured' ? 'Worked out from full lock as measured in the yard' : 'Worked out, not measured';
  return `${rests}: tyres that do not slide and a body with square corners. The real vehicle may be ${shortIn(units, OFF_M, 'nearest')} off. Mirrors are not counted.`;
}

/** Said wherever a lesson is shown. */
export const SWING_CAUTION =
  'Signs and the road decide. This is an aid for teaching and planning, not a permit. Have somebody watch the tail.';

/** Where the radius at full lock comes from, after a comma or in brackets. */
export const LOCK_FROM: Readonly<Record<LockSource, string>> = {
  measured: 'measured in the yard',
  'rear-axle radius': "the card's own figure",
  'kerb circle': "from the card's circle between kerbs",
  'wall circle': "from the card's circle between walls",
  estimate: 'an estimate, since the card gives no turning circle',
};
