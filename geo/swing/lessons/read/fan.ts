import { type Pose, poseAt } from '../../motion/motion.ts';
import type { Scene } from '../scene/scene.ts';

/** So many places, evenly along the way from the first to the last: the picture that stands still. */
export function fanOf({ motion }: Scene, count: number): readonly Pose[] {
  const last = motion.travelM.length - 1;
  const wholeM = motion.travelM[last]!;
  const poses: Pose[] = [];
  let index = 0;
  for (let place = 0; place < count; place++) {
    const travelM = count === 1 ? wholeM : (wholeM * place) / (count - 1);
    while (index < last && motion.travelM[index]! < travelM - 1e-9) index++;
    poses.push(poseAt(motion, index));
  }
  return poses;
}
