import { toDeg } from '../../../earth/angles.ts';

/** A way or a radius in a sentence: `3.4 m`. */
export function sayMetres(m: number): string {
  return `${m.toFixed(1)} m`;
}

/** A turn in a sentence: `21°`. */
export function sayDegrees(rad: number): string {
  return `${Math.round(toDeg(rad))}°`;
}
