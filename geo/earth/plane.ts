/** A place in a flat frame, metres. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * Where segment ab meets segment cd: how far along each, 0…1; undefined when they do not meet or run along one
 * another. Ends count. Solved by cross products.
 */
export function meet(a: Point, b: Point, c: Point, d: Point): { t: number; u: number } | undefined {
  const [rx, ry, sx, sy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y];
  const cross = rx * sy - ry * sx;
  // parallel within a micrometre per metre
  if (Math.abs(cross) <= 1e-6 * Math.hypot(rx, ry) * Math.hypot(sx, sy)) return undefined;
  const t = ((c.x - a.x) * sy - (c.y - a.y) * sx) / cross;
  const u = ((c.x - a.x) * ry - (c.y - a.y) * rx) / cross;
  const edge = 1e-9;
  return t < -edge || t > 1 + edge || u < -edge || u > 1 + edge ? undefined : { t, u };
}

/** Distance from p to segment ab. */
export function awayFrom(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length2 = dx * dx + dy * dy;
  const t = length2 > 0 ? ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2 : 0;
  const on = Math.min(1, Math.max(0, t));
  return Math.hypot(p.x - a.x - on * dx, p.y - a.y - on * dy);
}
