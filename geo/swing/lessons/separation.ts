import { shareNearest } from '../../earth/segment.ts';
import type { Pose } from '../motion/motion.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import type { Fixture, Point } from './scene.ts';
import { boxesOf } from './scenes/outline.ts';

/** The part of a tyre that meets a kerb. Metres; judgement. */
const TYRE_LENGTH_M = 0.5;
const TYRE_WIDTH_M = 0.2;
/** Nearer than this to a rectangle's end, a place of it is the corner. Metres. */
const CORNER_M = 0.25;

/** A rectangle of the vehicle in its own frame, turned about its middle. Metres, radians. */
interface Part {
  readonly name: string;
  readonly aheadM: number;
  readonly leftM: number;
  readonly turnRad: number;
  readonly halfLengthM: number;
  readonly halfWidthM: number;
}

/** How far a vehicle is from a thing: negative is inside it. */
export interface Separation {
  readonly gapM: number;
  /** place of the thing that is nearest, or deepest inside */
  readonly at: Point;
  /** part of the vehicle, as in a sentence: "right rear corner" */
  readonly part: string;
  readonly fixture: Fixture;
}

/** A kerb and an island are met by the wheels, the body hangs over them; all else that is hard by body and rack. */
export function partsMeeting(
  vehicle: SwingVehicle,
  steerRad: number,
  kind: Fixture['kind'],
): readonly Part[] {
  if (kind === 'kerb' || kind === 'island') return wheelsOf(vehicle, steerRad);
  return boxesOf(vehicle).map(({ what, backM, frontM, halfWidthM }) => ({
    name: what,
    aheadM: (backM + frontM) / 2,
    leftM: 0,
    turnRad: 0,
    halfLengthM: (frontM - backM) / 2,
    halfWidthM,
  }));
}

function wheelsOf(vehicle: SwingVehicle, steerRad: number): readonly Part[] {
  return (['left', 'right'] as const).flatMap((side) =>
    (['rear', 'front'] as const).map((end) => ({
      name: `${side} ${end} wheel`,
      aheadM: end === 'rear' ? 0 : vehicle.wheelbaseM,
      leftM: ((side === 'left' ? 1 : -1) * vehicle.trackM) / 2,
      turnRad: end === 'rear' ? 0 : steerRad,
      halfLengthM: TYRE_LENGTH_M / 2,
      halfWidthM: TYRE_WIDTH_M / 2,
    })),
  );
}

/** The least gap of some parts to the outline of a thing; undefined where it is not below a bound. Metres. */
export function separationOf(
  pose: Pose,
  parts: readonly Part[],
  fixture: Fixture,
  belowM: number,
): Separation | undefined {
  const { line, closed } = fixture;
  let best: Near = { gapM: belowM, x: 0, y: 0 };
  let nearest: Part | undefined;
  const cos = Math.cos(pose.headingRad);
  const sin = Math.sin(pose.headingRad);
  for (const part of parts) {
    const turned = pose.headingRad + part.turnRad;
    const [c, s] = [Math.cos(turned), Math.sin(turned)];
    const middleX = pose.xM + part.aheadM * cos - part.leftM * sin;
    const middleY = pose.yM + part.aheadM * sin + part.leftM * cos;
    const start = line[closed ? line.length - 1 : 0] as Point;
    let ax = (start.xM - middleX) * c + (start.yM - middleY) * s;
    let ay = (start.yM - middleY) * c - (start.xM - middleX) * s;
    for (let index = closed ? 0 : 1; index < line.length; index++) {
      const { xM, yM } = line[index] as Point;
      const bx = (xM - middleX) * c + (yM - middleY) * s;
      const by = (yM - middleY) * c - (xM - middleX) * s;
      const found = segmentToBox(ax, ay, bx, by, part.halfLengthM, part.halfWidthM, best.gapM);
      if (found) {
        best = found;
        nearest = part;
      }
      ax = bx;
      ay = by;
    }
  }
  if (!nearest) return undefined;
  const turned = pose.headingRad + nearest.turnRad;
  const [c, s] = [Math.cos(turned), Math.sin(turned)];
  return {
    gapM: best.gapM,
    at: {
      xM: pose.xM + nearest.aheadM * cos - nearest.leftM * sin + best.x * c - best.y * s,
      yM: pose.yM + nearest.aheadM * sin + nearest.leftM * cos + best.x * s + best.y * c,
    },
    part: nameOf(nearest, best.x, best.y),
    fixture,
  };
}

interface Near {
  readonly gapM: number;
  readonly x: number;
  readonly y: number;
}

/** A segment against a rectangle round the origin; undefined where it is not nearer than `belowM`. */
function segmentToBox(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  hx: number,
  hy: number,
  belowM: number,
): Near | undefined {
  // whole segment on the far side of one of the rectangle's lines: no nearer than that line
  const outside = Math.max(
    Math.min(ax, bx) - hx,
    -hx - Math.max(ax, bx),
    Math.min(ay, by) - hy,
    -hy - Math.max(ay, by),
  );
  if (outside >= belowM) return undefined;
  const inside = outside < 0 ? deepest(ax, ay, bx, by, hx, hy) : undefined;
  if (inside) return inside.gapM < belowM ? inside : undefined;
  let best: Near = { gapM: belowM, x: 0, y: 0 };
  const take = (px: number, py: number, qx: number, qy: number): void => {
    const gapM = Math.hypot(px - qx, py - qy);
    if (gapM < best.gapM) best = { gapM, x: px, y: py };
  };
  // two convex shapes apart: one of the ends, or one of the corners, is nearest
  take(ax, ay, Math.max(-hx, Math.min(hx, ax)), Math.max(-hy, Math.min(hy, ay)));
  take(bx, by, Math.max(-hx, Math.min(hx, bx)), Math.max(-hy, Math.min(hy, by)));
  const [dx, dy] = [bx - ax, by - ay];
  for (let corner = 0; corner < 4; corner++) {
    const cx = corner & 1 ? hx : -hx;
    const cy = corner & 2 ? hy : -hy;
    const share = shareNearest(cx - ax, cy - ay, dx, dy);
    take(ax + share * dx, ay + share * dy, cx, cy);
  }
  return best.gapM < belowM ? best : undefined;
}

/** The place of a segment that lies deepest in the rectangle, its depth negative; undefined where it does not enter. */
function deepest(ax: number, ay: number, bx: number, by: number, hx: number, hy: number): Near | undefined {
  let from = 0;
  let to = 1;
  for (const [start, step, half] of [
    [ax, bx - ax, hx],
    [ay, by - ay, hy],
  ] as const) {
    if (step === 0) {
      if (Math.abs(start) >= half) return undefined;
      continue;
    }
    const [t0, t1] = [(-half - start) / step, (half - start) / step];
    from = Math.max(from, Math.min(t0, t1));
    to = Math.min(to, Math.max(t0, t1));
  }
  if (from >= to) return undefined;
  const depthAt = (t: number): number =>
    Math.min(hx - Math.abs(ax + t * (bx - ax)), hy - Math.abs(ay + t * (by - ay)));
  // depth is concave along the segment
  for (let round = 0; round < 40; round++) {
    const [t0, t1] = [from + (to - from) / 3, to - (to - from) / 3];
    if (depthAt(t0) < depthAt(t1)) from = t0;
    else to = t1;
  }
  const t = (from + to) / 2;
  return { gapM: -Math.max(0, depthAt(t)), x: ax + t * (bx - ax), y: ay + t * (by - ay) };
}

/** "right rear corner", "left side", "rack", "left front wheel". */
function nameOf(part: Part, x: number, y: number): string {
  if (part.name !== 'body' && part.name !== 'rack') return part.name;
  const nearEnd = part.halfLengthM - Math.abs(x) < CORNER_M;
  const nearSide = part.halfWidthM - Math.abs(y) < CORNER_M;
  const side = y > 0 ? 'left' : 'right';
  if (part.name === 'rack') return nearSide ? `${side} corner of the rack` : 'rack';
  const end = x > 0 ? 'front' : 'rear';
  if (nearEnd && nearSide) return `${side} ${end} corner`;
  return nearSide ? `${side} side` : x > 0 ? 'front' : 'tail';
}
