import { toRad } from '../../earth/angles.ts';
import { otherSide, type Side } from '../point.ts';
import { type Motion, type Pose, poseAt } from './motion.ts';
import type { SideLine } from './side-line.ts';

/** A stretch of a motion with the wheel on one side, from straight wheels on. Sample numbers, both included. */
export interface SteeredSpan {
  readonly from: number;
  readonly to: number;
  /** where the wheel lies */
  readonly wheel: Side;
  /** the body's side that goes out, as it lay with the wheels straight when the span began */
  readonly line: SideLine;
  /** the wheel came over from the other side at some time before */
  readonly afterReversal: boolean;
}

/** Wheels this near to straight are straight: a swing afterwards starts afresh. Radians. */
const STRAIGHT_RAD = toRad(0.1);

/** The spans of a motion, in their order. */
export function steeredSpans(motion: Motion): readonly SteeredSpan[] {
  const { steerRad } = motion;
  const spans: SteeredSpan[] = [];
  let open: Omit<SteeredSpan, 'to' | 'afterReversal'> | undefined;
  let reversed = false;
  const close = (to: number): void => {
    if (!open) return;
    reversed ||= spans.some(({ wheel }) => wheel !== open?.wheel);
    spans.push({ ...open, to, afterReversal: reversed });
    open = undefined;
  };
  for (let index = 0; index < steerRad.length; index++) {
    const steer = steerRad[index]!;
    const wheel = Math.abs(steer) < STRAIGHT_RAD ? undefined : steer > 0 ? 'left' : 'right';
    if (wheel === open?.wheel) continue;
    close(Math.max(index - 1, open?.from ?? 0));
    if (wheel !== undefined) {
      const line = { pose: straightBefore(motion, index), side: otherSide(wheel) };
      open = { from: index, wheel, line };
    }
  }
  close(steerRad.length - 1);
  return spans;
}

/** How often the wheel passed from one side to the other. */
export function reversalsIn(spans: readonly SteeredSpan[]): number {
  return spans.filter(({ wheel }, index) => index > 0 && wheel !== spans[index - 1]?.wheel).length;
}

/** The pose at the instant before a sample when the wheel stood straight, or nearest to it. */
function straightBefore(motion: Motion, index: number): Pose {
  const now = poseAt(motion, index);
  if (index === 0) return now;
  const before = poseAt(motion, index - 1);
  const steerBefore = motion.steerRad[index - 1]!;
  const steerNow = motion.steerRad[index]!;
  if (steerBefore * steerNow >= 0) return before;
  const share = steerBefore / (steerBefore - steerNow);
  return {
    xM: before.xM + (now.xM - before.xM) * share,
    yM: before.yM + (now.yM - before.yM) * share,
    headingRad: before.headingRad + (now.headingRad - before.headingRad) * share,
  };
}
