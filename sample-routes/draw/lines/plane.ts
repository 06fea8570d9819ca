/** Metres east and north of the district's middle. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** In the open ocean, more than 500 km from any land. */
const MIDDLE = { lat: 47.5, lon: -20 };

const RADIANS = Math.PI / 180;
const PHI = MIDDLE.lat * RADIANS;
/** Length of a degree on the WGS 84 ellipsoid at the middle (series in the latitude, metres). */
const LAT_M = 111_132.954 - 559.822 * Math.cos(2 * PHI) + 1.175 * Math.cos(4 * PHI);
const LON_M = 111_412.84 * Math.cos(PHI) - 93.5 * Math.cos(3 * PHI) + 0.118 * Math.cos(5 * PHI);

/** Degrees, rounded to a millionth: a tenth of a metre, as fine as anyone surveys. */
export function toDegrees(point: Point): { lat: number; lon: number } {
  return {
    lat: Math.round((MIDDLE.lat + point.y / LAT_M) * 1e6) / 1e6,
    lon: Math.round((MIDDLE.lon + point.x / LON_M) * 1e6) / 1e6,
  };
}

export function toPlane(lat: number, lon: number): Point {
  return { x: (lon - MIDDLE.lon) * LON_M, y: (lat - MIDDLE.lat) * LAT_M };
}

export function distance(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

export function along(a: Point, b: Point, t: number): Point {
  return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
}

/** The point `ahead` metres on and `left` metres to the left when standing at `from` and looking at `heading`. */
export function step(from: Point, heading: number, ahead: number, left = 0): Point {
  const cos = Math.cos(heading);
  const sin = Math.sin(heading);
  return { x: from.x + cos * ahead - sin * left, y: from.y + sin * ahead + cos * left };
}

/** Radians, anticlockwise from east. */
export function headingOf(a: Point, b: Point): number {
  return Math.atan2(b.y - a.y, b.x - a.x);
}

/** Where on a–b a point falls: 0…1, and how far away it is. */
export function nearestOn(p: Point, a: Point, b: Point): { t: number; distance: number } {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const lengthSquared = dx * dx + dy * dy;
  const raw = lengthSquared === 0 ? 0 : ((p.x - a.x) * dx + (p.y - a.y) * dy) / lengthSquared;
  const t = Math.min(1, Math.max(0, raw));
  return { t, distance: distance(p, along(a, b, t)) };
}

/** Where a–b and c–d cross: fractions along each, undefined when they do not. */
export function crossing(a: Point, b: Point, c: Point, d: Point): { t: number; u: number } | undefined {
  const rx = b.x - a.x;
  const ry = b.y - a.y;
  const sx = d.x - c.x;
  const sy = d.y - c.y;
  const cross = rx * sy - ry * sx;
  if (Math.abs(cross) < 1e-12) return undefined;
  const t = ((c.x - a.x) * sy - (c.y - a.y) * sx) / cross;
  const u = ((c.x - a.x) * ry - (c.y - a.y) * rx) / cross;
  return t < 0 || t > 1 || u < 0 || u > 1 ? undefined : { t, u };
}

/** Whether a point lies within a ring (even-odd). */
export function isInside(p: Point, ring: readonly Point[]): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const a = item(ring, i);
    const b = item(ring, j);
    if (a.y > p.y !== b.y > p.y && p.x < ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}

/** A list's item that is known to be there. */
export function item<T>(list: readonly T[], index: number): T {
  const found = list.at(index);
  if (found === undefined) throw new Error(`no item ${index} of ${list.length}`);
  return found;
}
