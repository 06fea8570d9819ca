import { toDeg } from '../../../earth/angles.ts';
import { METRES_PER_FOOT } from '../../../units/exact.ts';
import { inUnits, type Units } from '../../../units/in-units.ts';

/** A way or a radius in a sentence, in metres: `3.4 m`, `11.2 ft`, or both. */
export function sayWay(units: Units, m: number): string {
  return inUnits(units, `${m.toFixed(1)} m`, `${(m / METRES_PER_FOOT).toFixed(1)} ft`);
}

/** A turn in a sentence: `21°`. */
export function sayDegrees(rad: number): string {
  return `${Math.round(toDeg(rad))}°`;
}
