import { boxesOf } from '../outline.ts';
import type { Point } from '../point.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import { onGround, type Pose } from './motion.ts';

/** The vehicle's outline on the ground, rack and all, corner by corner. */
export function outlineOnGround(vehicle: SwingVehicle, pose: Pose): Point[] {
  const boxes = boxesOf(vehicle);
  // back along the left side, forward again along the right one
  const left = boxes.flatMap(({ frontM, backM, halfWidthM }) => [
    onGround(pose, frontM, halfWidthM),
    onGround(pose, backM, halfWidthM),
  ]);
  const right = boxes
    .toReversed()
    .flatMap(({ frontM, backM, halfWidthM }) => [
      onGround(pose, backM, -halfWidthM),
      onGround(pose, frontM, -halfWidthM),
    ]);
  return [...left, ...right];
}
