/** Where the vehicle stands: the rear-axle centre and the way it points. Metres; radians anticlockwise from x. */
export interface Pose {
  readonly xM: number;
  readonly yM: number;
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

/** The pose at one sample. */
export function poseAt(motion: Motion, index: number): Pose {
  return {
    xM: motion.xM[index]!,
    yM: motion.yM[index]!,
    headingRad: motion.headingRad[index]!,
  };
}

/** A point of the vehicle (metres ahead of the rear axle, metres to the left) on the ground. */
export function onGround(
  pose: Pose,
  aheadM: number,
  leftM: number,
): { readonly xM: number; readonly yM: number } {
  const cos = Math.cos(pose.headingRad);
  const sin = Math.sin(pose.headingRad);
  return { xM: pose.xM + aheadM * cos - leftM * sin, yM: pose.yM + aheadM * sin + leftM * cos };
}
