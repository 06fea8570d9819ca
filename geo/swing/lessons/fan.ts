import { type Pose, poseAt } from '../motion/motion.ts';
import type { Scene } from './scene.ts';

/** One place of a run, drawn in outline. */
export interface Still {
  readonly index: number;
  readonly pose: Pose;
  readonly steerRad: number;
}

/** So many places, evenly along the way from the first to the last: the picture that stands still. */
export function fan(scene: Scene, count: number): readonly Still[] {
  const { motion } = scene;
  const last = motion.travelM.length - 1;
  const wholeM = motion.travelM[last]!;
  const stills: Still[] = [];
  let index = 0;
  for (let still = 0; still < count; still++) {
    const travelM = count === 1 ? wholeM : (wholeM * still) / (count - 1);
    while (index < last && motion.travelM[index]! < travelM - 1e-9) index++;
    stills.push({ index, pose: poseAt(motion, index), steerRad: motion.steerRad[index]! });
  }
  return stills;
}
