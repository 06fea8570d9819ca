import { lineString, simplify } from '@turf/turf';
import type { OnPaper } from './projection.ts';

/** A line with no more places than an eye tells apart. @param tolerance in the line's own unit */
export function thinLine(line: readonly OnPaper[], tolerance: number): OnPaper[] {
  if (line.length < 3) return [...line];
  const thin = simplify(lineString(line.map(({ x, y }) => [x, y])), { tolerance, highQuality: false });
  return thin.geometry.coordinates.map(([x = 0, y = 0]) => ({ x, y }));
}

/** The data of an SVG path along a line, a hundredth of a unit exact. */
export function pathAlong(line: readonly OnPaper[]): string {
  return line.length === 0 ? '' : `M${line.map(({ x, y }) => `${short(x)} ${short(y)}`).join('L')}`;
}

function short(value: number): string {
  return String(Math.round(value * 100) / 100);
}
