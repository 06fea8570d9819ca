import type { Point } from '../point.ts';

/** Where the vehicle stands: the rear-axle centre and the way it points. Metres; radians anticlockwise from x. */
export interface Pose extends Point {
  readonly headingRad: number;
}

/** How a vehicle moved, sample by sample; all arrays are of one length, at least one. */
export interface Motion {
  /** travel of the guided point from the start, metres, never falling */
  readonly travelM: Float64Array;
  readonly xM: Float64Array;
  readonly yM: Float64Array;
  readonly headingRad: Float64Array;
  /** single-track steering angle, left positive */
  readonly steerRad: Float64Array;
}

/** Where a path or a motion begins unless something else is said: at the origin, along x. */
export const ORIGIN: Pose = { xM: 0, yM: 0, headingRad: 0 };

/** The pose at one sample. */
export function poseAt(motion: Motion, index: number): Pose {
  return {
    xM: motion.xM[index]!,
    yM: motion.yM[index]!,
    headingRad: motion.headingRad[index]!,
  };
}

/** A point of the vehicle (metres ahead of the rear axle, metres to the left) on the ground. */
export function onGround(pose: Pose, aheadM: number, leftM: number): Point {
  const cos = Math.cos(pose.headingRad);
  const sin = Math.sin(pose.headingRad);
  return { xM: pose.xM + aheadM * cos - leftM * sin, yM: pose.yM + aheadM * sin + leftM * cos };
}

/** The pose after rolling along an arc, or straight on, by a length and a turn (left positive) in all. Metres, radians. */
export function alongArc(from: Pose, lengthM: number, turnRad: number): Pose {
  const half = turnRad / 2;
  // the chord along its middle heading: no division by a curvature that may be nought
  const chordM = half === 0 ? lengthM : (lengthM * Math.sin(half)) / half;
  return {
    xM: from.xM + chordM * Math.cos(from.headingRad + half),
    yM: from.yM + chordM * Math.sin(from.headingRad + half),
    headingRad: from.headingRad + turnRad,
  };
}
