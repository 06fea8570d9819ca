import { largest, smallest } from '../../../geo/lists.ts';
import type { Scene } from '../../../geo/swing/lessons/scene/scene.ts';
import { onGround } from '../../../geo/swing/motion/motion.ts';
import { sideLineAt } from '../../../geo/swing/motion/side-line.ts';
import { boxesOf } from '../../../geo/swing/outline.ts';
import { signOf } from '../../../geo/swing/point.ts';
import { pathOf } from './paths.ts';

/** Drawn on beyond the end that swings, and beyond the other. Metres. */
const BEYOND_M = { swinging: 1.5, other: 5 };

/** The line that a swing is read from, a little of it beyond both ends of the vehicle. In metres. */
export function SideLineDrawn({ scene, index }: { scene: Scene; index: number }) {
  const { vehicle, motion, reversing, swingSide } = scene;
  const { pose, side } = sideLineAt(motion, index, swingSide);
  const leftM = (signOf(side) * vehicle.widthM) / 2;
  const boxes = boxesOf(vehicle);
  const tailM = smallest(boxes.map(({ backM }) => backM)) - (reversing ? BEYOND_M.other : BEYOND_M.swinging);
  const noseM = largest(boxes.map(({ frontM }) => frontM)) + (reversing ? BEYOND_M.swinging : BEYOND_M.other);
  return <path class="swing-line" d={pathOf([onGround(pose, tailM, leftM), onGround(pose, noseM, leftM)])} />;
}
