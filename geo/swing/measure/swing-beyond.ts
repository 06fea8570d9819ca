import { type Motion, poseAt } from '../motion/motion.ts';
import { beyondSide, isHalfRound, type SideLine } from '../motion/side-line.ts';
import type { OutlineCorner } from '../outline.ts';
import type { Side } from '../point.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';

/** How far an end of the vehicle came out beyond the line of its own side, and where. */
export interface Swing {
  readonly swingM: number;
  readonly side: Side;
  /** whose corner it is */
  readonly what: OutlineCorner['what'];
  /** travel of the guided point */
  readonly atTravelM: number;
  /** how far the vehicle had turned by then, without a sign */
  readonly headingChangeRad: number;
}

/** Between two samples, both included, beyond a line. */
interface SwingSpan {
  readonly from: number;
  readonly to: number;
  readonly line: SideLine;
}

/**
 * The most that any of some corners comes out, between two samples, beyond the line of the body side as it lay at a pose,
 * until the vehicle has turned half round from it; never below nothing. Between the samples round the most a
 * parabola is laid.
 */
export function swingBeyond(
  vehicle: SwingVehicle,
  motion: Motion,
  { from, to, line }: SwingSpan,
  corners: readonly OutlineCorner[],
): Swing {
  const beyond = beyondSide(vehicle, line);
  let best: Swing = {
    swingM: 0,
    side: line.side,
    what: 'body',
    atTravelM: motion.travelM[from]!,
    headingChangeRad: 0,
  };
  for (const corner of corners) {
    const read = (index: number): Reading => ({
      at: motion.travelM[index]!,
      value: beyond(poseAt(motion, index), corner),
    });
    let index = -1;
    let mostM = best.swingM;
    for (let i = from; i <= to; i++) {
      const pose = poseAt(motion, i);
      if (isHalfRound(pose, line)) break;
      const out = beyond(pose, corner);
      if (out > mostM) {
        mostM = out;
        index = i;
      }
    }
    if (index < 0) continue;
    const top = topOf(read(Math.max(from, index - 1)), read(index), read(Math.min(to, index + 1)));
    best = {
      swingM: top.value,
      side: line.side,
      what: corner.what,
      atTravelM: top.at,
      headingChangeRad: Math.abs(headingNear(motion, index, top.at) - line.pose.headingRad),
    };
  }
  return best;
}

interface Reading {
  readonly at: number;
  readonly value: number;
}

/** The top of the parabola through three readings of which the middle is the highest; that one where there is no parabola. */
function topOf(first: Reading, middle: Reading, last: Reading): Reading {
  if (!(first.at < middle.at && middle.at < last.at)) return middle;
  const before = (middle.value - first.value) / (middle.at - first.at);
  const after = (last.value - middle.value) / (last.at - middle.at);
  const bend = (after - before) / (last.at - first.at);
  if (!(bend < 0)) return middle;
  const at = (first.at + middle.at) / 2 - before / (2 * bend);
  return { at, value: first.value + (at - first.at) * (before + bend * (at - middle.at)) };
}

function headingNear({ travelM, headingRad }: Motion, index: number, at: number): number {
  const other = at < travelM[index]! ? index - 1 : index + 1;
  const h = headingRad[index]!;
  const spanM = (travelM[other] ?? 0) - travelM[index]!;
  if (other < 0 || other >= travelM.length || spanM === 0) return h;
  return h + ((headingRad[other]! - h) * (at - travelM[index]!)) / spanM;
}
