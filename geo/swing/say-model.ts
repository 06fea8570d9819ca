import type { LockSource } from './swing-vehicle.ts';

/** What the figures rest on; said wherever they stand. */
export const SWING_MODEL =
  'Computed: no slip, rectangle body; measured vehicles may differ by ±5 cm. Mirrors are not counted.';

/** Said wherever a lesson is shown. */
export const SWING_CAUTION =
  'Signs and the road decide. This is an aid for teaching and planning, not a permit. Have somebody watch the tail.';

/** Where the radius at full lock comes from, after a comma or in brackets. */
export const LOCK_FROM: Readonly<Record<LockSource, string>> = {
  'rear-axle radius': "the card's own figure",
  'kerb circle': "from the card's circle between kerbs",
  'wall circle': "from the card's circle between walls",
  estimate: 'an estimate, since the card gives no turning circle',
};
