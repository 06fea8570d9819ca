import { type Motion, type Pose, poseAt } from '../motion/motion.ts';
import { type Turn, turnsOf } from '../motion/turns-of.ts';
import { noseOf, tailPointsOf } from '../outline.ts';
import { HALF_ROUND_RAD, type OutlinePoint } from '../swing-beyond.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import type { Scene } from './scene.ts';
import { stepInto } from './scenes/legs.ts';

/** The swing at every sample, and the most of the whole run. Metres; nothing below 0. */
export interface Swings {
  readonly nowM: Float64Array;
  readonly mostM: Float64Array;
  /** the turn in which each sample lies, or that lies before it; −1 before the first */
  readonly turnAt: Int16Array;
  readonly turns: readonly Turn[];
}

/**
 * How far the tail (running backwards: the nose) is out at each sample, beyond the line of the body side as it lay when
 * the wheel was last straight: after that instant the motion starts afresh, on whichever side.
 */
export function swingsOf({ vehicle, motion, reversing }: Scene): Swings {
  const turns = turnsOf(motion);
  const count = motion.xM.length;
  const nowM = new Float64Array(count);
  const mostM = new Float64Array(count);
  const turnAt = new Int16Array(count).fill(-1);
  const [tails, nose] = [tailPointsOf(vehicle), [noseOf(vehicle)]];
  let turn = -1;
  let backwards = reversing;
  let most = 0;
  for (let index = 0; index < count; index++) {
    if (turns[turn + 1] && index >= (turns[turn + 1] as Turn).from) turn++;
    const stepM = stepInto(motion, index);
    if (stepM !== 0) backwards = stepM < 0;
    const now = turns[turn];
    if (now) nowM[index] = outM(vehicle, motion, index, now, backwards ? nose : tails);
    most = Math.max(most, nowM[index]!);
    mostM[index] = most;
    turnAt[index] = turn;
  }
  return { nowM, mostM, turnAt, turns };
}

function outM(
  vehicle: SwingVehicle,
  motion: Motion,
  index: number,
  turn: Turn,
  points: readonly OutlinePoint[],
): number {
  const side = turn.wheel === 'left' ? -1 : 1;
  const turnedRad = motion.headingRad[index]! - turn.began.headingRad;
  if (Math.abs(turnedRad) > HALF_ROUND_RAD) return 0;
  let most = 0;
  for (const point of points)
    most = Math.max(most, beyondLineM(poseAt(motion, index), turn.began, side, point) - vehicle.widthM / 2);
  return most;
}

/** How far a point lies from the middle line of an earlier pose, to one side (1 left, −1 right). Metres. */
export function beyondLineM(
  pose: Pose,
  line: Pose,
  side: 1 | -1,
  { aheadM, halfWidthM }: OutlinePoint,
): number {
  const turned = pose.headingRad - line.headingRad;
  const rearLeftM =
    (pose.yM - line.yM) * Math.cos(line.headingRad) - (pose.xM - line.xM) * Math.sin(line.headingRad);
  return side * (rearLeftM + aheadM * Math.sin(turned)) + halfWidthM * Math.cos(turned);
}
