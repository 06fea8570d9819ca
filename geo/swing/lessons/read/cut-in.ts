import { onGround, poseAt } from '../../motion/motion.ts';
import { type Side, signOf } from '../../point.ts';
import type { Scene } from '../scene/scene.ts';
import { toSegmentM } from './lines.ts';
import { spanAt, swingsOf } from './swings.ts';

/**
 * How far the inner rear wheel runs inside the track of the inner front wheel, so far as that has been driven; before
 * the start the vehicle came straight. 0 running backwards, where the rear wheels lead.
 * @param wheel the side it is turned to; undefined: straight so far
 */
export function cutInAt(
  { motion, vehicle, reversing }: Scene,
  index: number,
  wheel: Side | undefined,
): number {
  if (!wheel || reversing) return 0;
  const leftM = (signOf(wheel) * vehicle.trackM) / 2;
  const rear = onGround(poseAt(motion, index), 0, leftM);
  let a = onGround(poseAt(motion, 0), -vehicle.wheelbaseM, leftM);
  let leastM = Number.POSITIVE_INFINITY;
  for (let sample = 0; sample <= index; sample++) {
    const b = onGround(poseAt(motion, sample), vehicle.wheelbaseM, leftM);
    leastM = Math.min(leastM, toSegmentM(rear, a, b));
    a = b;
  }
  return leastM;
}

/** Samples passed over: a hair's breadth between them is lost, and the work is a tenth. */
const STRIDE = 10;

/** The most cut-in of the whole way. Metres. */
export function mostCutInM(scene: Scene): number {
  const swings = swingsOf(scene);
  let most = 0;
  for (let index = 0; index < scene.motion.xM.length; index += STRIDE)
    most = Math.max(most, cutInAt(scene, index, spanAt(swings, index)?.wheel));
  return most;
}
