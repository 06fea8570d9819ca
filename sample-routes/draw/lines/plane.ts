import { toRad } from '../../../geo/earth/angles.ts';
import type { Point } from '../../../geo/earth/point.ts';
import type { Place } from '../../../geo/earth/sphere.ts';

/** In the open ocean, more than 500 km from any land. */
const MIDDLE = { lat: 47.5, lon: -20 };

const PHI = toRad(MIDDLE.lat);
/** Length of a degree on the WGS 84 ellipsoid at the middle (series in the latitude, metres). */
const LAT_M = 111_132.954 - 559.822 * Math.cos(2 * PHI) + 1.175 * Math.cos(4 * PHI);
const LON_M = 111_412.84 * Math.cos(PHI) - 93.5 * Math.cos(3 * PHI) + 0.118 * Math.cos(5 * PHI);

/** Degrees, rounded to a millionth: a tenth of a metre, as fine as anyone surveys. */
export function toDegrees(point: Point): Place {
  return {
    lat: Math.round((MIDDLE.lat + point.y / LAT_M) * 1e6) / 1e6,
    lon: Math.round((MIDDLE.lon + point.x / LON_M) * 1e6) / 1e6,
  };
}

/** Metres east and north of the district's middle. */
export function toPlane(lat: number, lon: number): Point {
  return { x: (lon - MIDDLE.lon) * LON_M, y: (lat - MIDDLE.lat) * LAT_M };
}

/** The point `ahead` metres on and `left` metres to the left when standing at `from` and looking at `heading`. */
export function step(from: Point, heading: number, ahead: number, left = 0): Point {
  const cos = Math.cos(heading);
  const sin = Math.sin(heading);
  return { x: from.x + cos * ahead - sin * left, y: from.y + sin * ahead + cos * left };
}

/** A list's item that is known to be there. */
export function item<T>(list: readonly T[], index: number): T {
  const found = list.at(index);
  if (found === undefined) throw new Error(`no item ${index} of ${list.length}`);
  return found;
}
