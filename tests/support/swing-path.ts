import { type FollowOptions, follow } from '../../geo/swing/motion/follow.ts';
import type { Guide, GuidePath, PathPiece } from '../../geo/swing/motion/guide-path.ts';
import type { Motion } from '../../geo/swing/motion/motion.ts';
import type { SwingVehicle } from '../../geo/swing/swing-vehicle.ts';

export const line = (lengthM: number): PathPiece => ({ kind: 'line', lengthM });
/** Degrees, left positive. */
export const arc = (radiusM: number, turnDeg: number): PathPiece => ({
  kind: 'arc',
  radiusM,
  turnRad: (turnDeg * Math.PI) / 180,
});
/** The corner of the reference cases. */
export const CORNER: GuidePath = { pieces: [line(30), arc(8, 90), line(40)] };

/** The motion of a vehicle that can follow the path. */
export function driven(
  vehicle: SwingVehicle,
  path: GuidePath,
  guide: Guide,
  options?: FollowOptions,
): Motion {
  const motion = follow(vehicle, path, guide, options);
  if (!motion.ok) throw new Error(motion.error.message);
  return motion.value;
}
