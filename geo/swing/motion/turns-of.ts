import { toRad } from '../../earth/angles.ts';
import { type Motion, type Pose, poseAt } from './motion.ts';

/** A stretch of a motion with the wheel on one side, from straight wheels on. Sample numbers, both included. */
export interface Turn {
  readonly from: number;
  readonly to: number;
  /** where the wheel lies */
  readonly wheel: 'left' | 'right';
  /** the vehicle with its wheels straight, as the turn began */
  readonly began: Pose;
  /** the wheel came over from the other side at some time before */
  readonly afterReversal: boolean;
}

/** Wheels this near to straight are straight: a swing afterwards starts afresh. Radians. */
const STRAIGHT_RAD = toRad(0.1);

/** The turns of a motion, in their order. */
export function turnsOf(motion: Motion): readonly Turn[] {
  const { steerRad } = motion;
  const turns: Turn[] = [];
  let open: { from: number; wheel: 'left' | 'right'; began: Pose } | undefined;
  const close = (to: number): void => {
    if (open) turns.push({ ...open, to, afterReversal: turns.some(({ wheel }) => wheel !== open?.wheel) });
    open = undefined;
  };
  for (let index = 0; index < steerRad.length; index++) {
    const steer = steerRad[index]!;
    const wheel = Math.abs(steer) < STRAIGHT_RAD ? undefined : steer > 0 ? 'left' : 'right';
    if (wheel === open?.wheel) continue;
    close(Math.max(index - 1, open?.from ?? 0));
    if (wheel !== undefined) open = { from: index, wheel, began: straightBefore(motion, index) };
  }
  close(steerRad.length - 1);
  // a turn that comes back to the first side after the other has been used is after a reversal too
  const reversed = turns.findIndex(({ afterReversal }) => afterReversal);
  return turns.map((turn, index) =>
    reversed >= 0 && index > reversed ? { ...turn, afterReversal: true } : turn,
  );
}

/** How often the wheel passed from one side to the other. */
export function reversalsIn(turns: readonly Turn[]): number {
  return turns.filter(({ wheel }, index) => index > 0 && wheel !== turns[index - 1]?.wheel).length;
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
