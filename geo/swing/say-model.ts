import { METRES_PER_FOOT } from '../units/exact.ts';
import { inUnits, shortIn, type Units } from '../units/in-units.ts';
import type { FullLock, LockSource } from '../vehicle/lock/full-lock.ts';
import { MODEL_OFF_M } from './model-off.ts';

/** What the figures rest on; said wherever they stand. */
export function sayModel(lock: FullLock, units: Units): string {
  const rests =
    lock.from === 'measured'
      ? 'Worked out from full lock as measured in the yard'
      : 'Worked out, not measured';
  const estimate = lock.from === 'estimate' ? `${sayEstimatedLock(lock, units)} ` : '';
  return `${estimate}${rests}: tyres that do not slide and a body with square corners. The real vehicle may be ${shortIn(units, MODEL_OFF_M, 'nearest')} off. Mirrors are not counted.`;
}

/** The radius of an estimated full lock as what it is, and how to know better. */
function sayEstimatedLock({ lowM, highM }: FullLock, units: Units): string {
  return `Full lock is an estimate: the card gives no turning circle, and the rear axle’s radius may be anywhere from ${sayTurnRange(units, lowM, highM)}. Measure it in the yard to know.`;
}

/** `4.6 to 5.6 m`: two radii, rounded outwards to a decimetre. */
export function sayTurnRange(units: Units, lowM: number, highM: number): string {
  const [low, high] = [Math.floor(lowM * 10) / 10, Math.ceil(highM * 10) / 10];
  const feet = (m: number) => (m / METRES_PER_FOOT).toFixed(1);
  return inUnits(units, `${low.toFixed(1)} to ${high.toFixed(1)} m`, `${feet(low)} to ${feet(high)} ft`);
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
