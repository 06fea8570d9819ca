import { toDeg } from '../earth/angles.ts';
import type { VehicleCard } from './card.ts';

/**
 * Steepest concave break of grade that the tail clears: rise over run, h / O, with the height h under the tail and the
 * overhang O behind the rear axle, a fitted rack counted in. The plain form tan a = h / O is up to 0.6° on the safe
 * side of the tangent to the tyre. undefined when the card gives no clearance.
 */
export function departureSlope(card: VehicleCard): number | undefined {
  if (card.rearClearanceM === undefined) return undefined;
  const overhangM = card.rearOverhangM + (card.rack?.fitted === true ? card.rack.lengthM : 0);
  return overhangM > 0 ? card.rearClearanceM / overhangM : Number.POSITIVE_INFINITY;
}

/** Largest convex break of grade that the belly clears: 2 atan(2 h / L), radians (SAE J689). undefined without a clearance. */
export function breakoverRad(card: VehicleCard): number | undefined {
  if (card.bellyClearanceM === undefined) return undefined;
  return 2 * Math.atan((2 * card.bellyClearanceM) / card.wheelbaseM);
}

/** `1 in 7 (8°)`: rounded against the driver. */
export function printSlope(slope: number): string {
  const degrees = toDeg(Math.atan(slope));
  return `1 in ${Math.ceil(1 / slope - 1e-9)} (${(Math.floor(degrees * 10 + 1e-9) / 10).toFixed(1)}°)`;
}
