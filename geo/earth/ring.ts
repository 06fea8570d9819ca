import type { Point } from './point.ts';

/**
 * Whether a ray eastwards from a place crosses edge ab, its ends as seen from the place. By the even-odd rule a place lies within what is enclosed when its
 * ray crosses an odd number of edges, in whatever order they stand. An edge holds its lower end and not its upper.
 */
export function rayCrosses(ax: number, ay: number, bx: number, by: number): boolean {
  return ay > 0 !== by > 0 && ax - (ay / (by - ay)) * (bx - ax) > 0;
}

/** Whether a place lies within a ring, whether or not its last corner is its first again. */
export function isInRing(p: Point, ring: readonly Point[]): boolean {
  let inside = false;
  let before = ring.at(-1);
  for (const here of ring) {
    if (before && rayCrosses(before.x - p.x, before.y - p.y, here.x - p.x, here.y - p.y)) inside = !inside;
    before = here;
  }
  return inside;
}
