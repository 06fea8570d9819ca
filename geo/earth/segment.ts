import type { Point } from './point.ts';

/**
 * Where segment ab meets segment cd: how far along each, 0…1; undefined when they do not meet or run along one
 * another. Ends count. Solved by cross products.
 */
export function crossing(a: Point, b: Point, c: Point, d: Point): { t: number; u: number } | undefined {
  const [rx, ry, sx, sy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y];
  const cross = rx * sy - ry * sx;
  // parallel within a micrometre per metre
  if (Math.abs(cross) <= 1e-6 * Math.hypot(rx, ry) * Math.hypot(sx, sy)) return undefined;
  const t = ((c.x - a.x) * sy - (c.y - a.y) * sx) / cross;
  const u = ((c.x - a.x) * ry - (c.y - a.y) * rx) / cross;
  const edge = 1e-9;
  return t < -edge || t > 1 + edge || u < -edge || u > 1 + edge ? undefined : { t, u };
}

/**
 * How far along a segment, 0…1, the place nearest to a point lies: the point's projection, held within the ends.
 * Both as seen from the segment's beginning. Numbers alone, for loops that run millions of times.
 */
export function shareNearest(px: number, py: number, dx: number, dy: number): number {
  const squared = dx * dx + dy * dy;
  return squared > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / squared)) : 0;
}

/** Distance of a point from a segment, both as seen from the segment's beginning. */
export function awayFromSpan(px: number, py: number, dx: number, dy: number): number {
  const t = shareNearest(px, py, dx, dy);
  return Math.hypot(px - t * dx, py - t * dy);
}

/** The place of segment ab nearest to p: how far along, 0…1, and how far from p. */
export function nearestOn(p: Point, a: Point, b: Point): { t: number; awayM: number } {
  const [px, py, dx, dy] = [p.x - a.x, p.y - a.y, b.x - a.x, b.y - a.y];
  const t = shareNearest(px, py, dx, dy);
  return { t, awayM: Math.hypot(px - t * dx, py - t * dy) };
}

/** Distance from p to segment ab. */
export function awayFrom(p: Point, a: Point, b: Point): number {
  return awayFromSpan(p.x - a.x, p.y - a.y, b.x - a.x, b.y - a.y);
}
