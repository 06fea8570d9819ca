import type { Motion, Pose } from './motion/motion.ts';

/** A point of the body's outline, taken on whichever side is asked for. Metres ahead of the rear axle, from the middle line. */
export interface OutlinePoint {
  readonly aheadM: number;
  readonly halfWidthM: number;
}

/** How far an end of the vehicle came out beyond the line of its own side, and where. */
export interface Swing {
  readonly swingM: number;
  readonly side: 'left' | 'right';
  /** travel of the guided point */
  readonly atTravelM: number;
  /** how far the vehicle had turned by then, without a sign */
  readonly headingChangeRad: number;
}

/** Turned farther than half round, a vehicle comes back over its own line as a whole: that is no swing. Radians. */
export const HALF_ROUND_RAD = Math.PI;

/**
 * The most that any of some points comes out, between two samples, beyond the line of the body side as it lay at a pose,
 * until the vehicle has turned half round from it; never below nothing. Between the samples round the most a
 * parabola is laid.
 */
export function swingBeyond(
  motion: Motion,
  span: { readonly from: number; readonly to: number },
  line: Pose,
  side: 'left' | 'right',
  points: readonly OutlinePoint[],
  widthM: number,
): Swing {
  const sign = side === 'left' ? 1 : -1;
  const cosLine = Math.cos(line.headingRad);
  const sinLine = Math.sin(line.headingRad);
  const outAt = (index: number, { aheadM, halfWidthM }: OutlinePoint): number => {
    const turned = motion.headingRad[index]! - line.headingRad;
    const rearLeftM = (motion.yM[index]! - line.yM) * cosLine - (motion.xM[index]! - line.xM) * sinLine;
    return sign * (rearLeftM + aheadM * Math.sin(turned)) + halfWidthM * Math.cos(turned) - widthM / 2;
  };
  let best: Swing = { swingM: 0, side, atTravelM: motion.travelM[span.from]!, headingChangeRad: 0 };
  for (const point of points) {
    let index = -1;
    let mostM = best.swingM;
    for (let i = span.from; i <= span.to; i++) {
      if (Math.abs(motion.headingRad[i]! - line.headingRad) > HALF_ROUND_RAD) break;
      const out = outAt(i, point);
      if (out > mostM) {
        mostM = out;
        index = i;
      }
    }
    if (index < 0) continue;
    const near = [Math.max(span.from, index - 1), index, Math.min(span.to, index + 1)] as const;
    const [t0, t1, t2] = near.map((i) => motion.travelM[i]!) as [number, number, number];
    const top = topOf(t0, outAt(near[0], point), t1, mostM, t2, outAt(near[2], point));
    best = {
      swingM: top.value,
      side,
      atTravelM: top.at,
      headingChangeRad: Math.abs(headingNear(motion, index, top.at) - line.headingRad),
    };
  }
  return best;
}

/** The top of the parabola through three points of which the middle is the highest; that one where there is no parabola. */
function topOf(
  t0: number,
  v0: number,
  t1: number,
  v1: number,
  t2: number,
  v2: number,
): { readonly at: number; readonly value: number } {
  if (!(t0 < t1 && t1 < t2)) return { at: t1, value: v1 };
  const before = (v1 - v0) / (t1 - t0);
  const after = (v2 - v1) / (t2 - t1);
  const bend = (after - before) / (t2 - t0);
  if (!(bend < 0)) return { at: t1, value: v1 };
  const at = (t0 + t1) / 2 - before / (2 * bend);
  return { at, value: v0 + (at - t0) * (before + bend * (at - t1)) };
}

function headingNear({ travelM, headingRad }: Motion, index: number, at: number): number {
  const other = at < travelM[index]! ? index - 1 : index + 1;
  const h = headingRad[index]!;
  const spanM = (travelM[other] ?? 0) - travelM[index]!;
  if (other < 0 || other >= travelM.length || spanM === 0) return h;
  return h + ((headingRad[other]! - h) * (at - travelM[index]!)) / spanM;
}
