/** A place in a flat frame, metres: x east, y north. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Metres between two places. */
export function apartM(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

/** The place so far (0…1) on the way from one to another. */
export function pointBetween(a: Point, b: Point, share: number): Point {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}

/** Direction from one place to another, radians anticlockwise from east. */
export function headingRad(a: Point, b: Point): number {
  return Math.atan2(b.y - a.y, b.x - a.x);
}
