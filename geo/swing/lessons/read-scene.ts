import { awayFromSpan } from '../../earth/segment.ts';
import { given } from '../../given.ts';
import { onGround, poseAt } from '../motion/motion.ts';
import { nearestAt } from './contact.ts';
import type { Reading, Scene } from './scene.ts';
import { type Swings, swingsOf } from './swings.ts';

/** The swing of a scene, worked out once: a scene never changes, and is read at every frame of the picture. */
const known = new WeakMap<Scene, Swings>();

/** How far tail or nose is out at every sample; worked out once for a scene. */
export function swingsOfScene(scene: Scene): Swings {
  const before = known.get(scene);
  if (before) return before;
  const swings = swingsOf(scene);
  known.set(scene, swings);
  return swings;
}

/** What the scene shows at one sample; an index beyond either end reads that end. */
export function readScene(scene: Scene, index: number): Reading {
  const { motion, vehicle, fixtures } = scene;
  const now = Math.max(0, Math.min(motion.xM.length - 1, Math.round(index)));
  const swings = swingsOfScene(scene);
  const pose = poseAt(motion, now);
  const steerRad = motion.steerRad[now]!;
  const near = nearestAt(vehicle, pose, steerRad, fixtures);
  const turn = swings.turns[swings.turnAt[now]!];
  return {
    swingM: swings.nowM[now]!,
    swingMostM: swings.mostM[now]!,
    swingSide: turn ? (turn.wheel === 'left' ? 'right' : 'left') : scene.swingSide,
    cutInM: cutInAt(scene, now, turn?.wheel),
    steerRad,
    headingChangeRad: Math.abs(pose.headingRad - motion.headingRad[0]!),
    nearestM: near?.gapM ?? Number.POSITIVE_INFINITY,
    ...given({ nearestTo: near?.fixture.name }),
  };
}

/**
 * How far the inner rear wheel runs inside the track of the inner front wheel, so far as that has been driven; before
 * the start the vehicle came straight. 0 running backwards, where the rear wheels lead.
 */
export function cutInAt(
  { motion, vehicle, reversing }: Scene,
  index: number,
  wheel?: 'left' | 'right',
): number {
  if (!wheel || reversing) return 0;
  const leftM = ((wheel === 'left' ? 1 : -1) * vehicle.trackM) / 2;
  const rear = onGround(poseAt(motion, index), 0, leftM);
  const before = onGround(poseAt(motion, 0), -vehicle.wheelbaseM, leftM);
  let [ax, ay] = [before.xM, before.yM];
  let least = Number.POSITIVE_INFINITY;
  for (let sample = 0; sample <= index; sample++) {
    const heading = motion.headingRad[sample]!;
    const [cos, sin] = [Math.cos(heading), Math.sin(heading)];
    const bx = motion.xM[sample]! + vehicle.wheelbaseM * cos - leftM * sin;
    const by = motion.yM[sample]! + vehicle.wheelbaseM * sin + leftM * cos;
    const [dx, dy] = [bx - ax, by - ay];
    least = Math.min(least, awayFromSpan(rear.xM - ax, rear.yM - ay, dx, dy));
    [ax, ay] = [bx, by];
  }
  return least;
}
