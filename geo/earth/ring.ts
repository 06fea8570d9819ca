import type { Point } from './point.ts';

/**
 * Whether a ray eastwards from p crosses edge ab. By the even-odd rule a place lies within what is enclosed when its
 * ray crosses an odd number of edges, in whatever order they stand. An edge holds its lower end and not its upper.
 */
export function rayCrosses(px: number, py: number, ax: number, ay: number, bx: number, by: number): boolean {
  return ay > py !== by > py && px < ax + ((py - ay) / (by - ay)) * (bx - ax);
}

/** Whether a place lies within a ring, whether or not its last corner is its first again. */
export function isInRing(p: Point, ring: readonly Point[]): boolean {
  let inside = false;
  let before = ring.at(-1);
  for (const here of ring) {
    if (before && rayCrosses(p.x, p.y, before.x, before.y, here.x, here.y)) inside = !inside;
    before = here;
  }
  return inside;
}
