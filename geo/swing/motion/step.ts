import type { SwingVehicle } from '../swing-vehicle.ts';
import { alongArc, type Motion, type Pose } from './motion.ts';

/**
 * Where the vehicle stands after a step with the wheel held: an exact arc of the rear-axle centre.
 * @param steerRad left positive
 * @param travelM of the rear-axle centre, negative backwards
 */
export function stepBy(vehicle: SwingVehicle, pose: Pose, steerRad: number, travelM: number): Pose {
  const turnRad = (travelM * Math.tan(steerRad)) / vehicle.wheelbaseM;
  return alongArc(pose, travelM, turnRad);
}

/** Way of the rear-axle centre from the sample before to this one, negative backwards; 0 where only the wheel turned. */
export function stepInto(motion: Motion, index: number): number {
  if (index === 0) return 0;
  const dx = motion.xM[index]! - motion.xM[index - 1]!;
  const dy = motion.yM[index]! - motion.yM[index - 1]!;
  const middle = (motion.headingRad[index]! + motion.headingRad[index - 1]!) / 2;
  const half = (motion.headingRad[index]! - motion.headingRad[index - 1]!) / 2;
  const chordM = dx * Math.cos(middle) + dy * Math.sin(middle);
  return half === 0 ? chordM : (chordM * half) / Math.sin(half);
}
