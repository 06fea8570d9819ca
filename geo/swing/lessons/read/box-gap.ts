import type { Point as Place } from '../../../earth/point.ts';
import { shareNearest } from '../../../earth/segment.ts';

/** How near a place of a thing is, in the frame of a rectangle: its middle at the origin. Metres. */
export interface Near extends Place {
  /** negative: how deep inside */
  readonly gapM: number;
}

/** A segment against a rectangle round the origin, given by half its sizes; undefined where it is not nearer than `belowM`. */
export function segmentToBox(a: Place, b: Place, half: Place, belowM: number): Near | undefined {
  // whole segment on the far side of one of the rectangle's lines: no nearer than that line
  const outside = Math.max(
    Math.min(a.x, b.x) - half.x,
    -half.x - Math.max(a.x, b.x),
    Math.min(a.y, b.y) - half.y,
    -half.y - Math.max(a.y, b.y),
  );
  if (outside >= belowM) return undefined;
  const inside = outside < 0 ? deepest(a, b, half) : undefined;
  if (inside) return inside.gapM < belowM ? inside : undefined;
  let best: Near = { gapM: belowM, x: 0, y: 0 };
  const take = (px: number, py: number, qx: number, qy: number): void => {
    const gapM = Math.hypot(px - qx, py - qy);
    if (gapM < best.gapM) best = { gapM, x: px, y: py };
  };
  // two convex shapes apart: one of the ends, or one of the corners, is nearest
  for (const { x, y } of [a, b])
    take(x, y, Math.max(-half.x, Math.min(half.x, x)), Math.max(-half.y, Math.min(half.y, y)));
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  for (let corner = 0; corner < 4; corner++) {
    const cx = corner & 1 ? half.x : -half.x;
    const cy = corner & 2 ? half.y : -half.y;
    const share = shareNearest(cx - a.x, cy - a.y, dx, dy);
    take(a.x + share * dx, a.y + share * dy, cx, cy);
  }
  return best.gapM < belowM ? best : undefined;
}

/** The place of a segment that lies deepest in the rectangle, its depth negative; undefined where it does not enter. */
function deepest(a: Place, b: Place, half: Place): Near | undefined {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  let from = 0;
  let to = 1;
  for (const [start, step, most] of [
    [a.x, dx, half.x],
    [a.y, dy, half.y],
  ] as const) {
    if (step === 0) {
      if (Math.abs(start) >= most) return undefined;
      continue;
    }
    const [t0, t1] = [(-most - start) / step, (most - start) / step];
    from = Math.max(from, Math.min(t0, t1));
    to = Math.min(to, Math.max(t0, t1));
  }
  if (from >= to) return undefined;
  const depthAt = (t: number): number =>
    Math.min(half.x - Math.abs(a.x + t * dx), half.y - Math.abs(a.y + t * dy));
  // depth is concave along the segment
  for (let round = 0; round < 40; round++) {
    const [t0, t1] = [from + (to - from) / 3, to - (to - from) / 3];
    if (depthAt(t0) < depthAt(t1)) from = t0;
    else to = t1;
  }
  const t = (from + to) / 2;
  return { gapM: -Math.max(0, depthAt(t)), x: a.x + t * dx, y: a.y + t * dy };
}
