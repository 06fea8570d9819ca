import type { OutlineCorner } from '../outline.ts';
import { otherSide, type Point, type Side, signOf } from '../point.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import { type Motion, onGround, type Pose, poseAt } from './motion.ts';

/** The line a swing is read from: one side of the body, as it lay at a pose. */
export interface SideLine {
  readonly pose: Pose;
  readonly side: Side;
}

/** The vehicle has turned farther than half round from its line: it comes back over it as a whole, and that is no swing. */
export function isHalfRound(pose: Pose, line: SideLine): boolean {
  return Math.abs(pose.headingRad - line.pose.headingRad) > Math.PI;
}

/** Reads how far a corner, on the line's side of the vehicle, lies beyond the line at a pose; negative short of it. Metres. */
export function beyondSide(
  { widthM }: SwingVehicle,
  { pose: line, side }: SideLine,
): (pose: Pose, corner: Omit<OutlineCorner, 'what'>) => number {
  const sign = signOf(side);
  const cosLine = Math.cos(line.headingRad);
  const sinLine = Math.sin(line.headingRad);
  return ({ xM, yM, headingRad }, { aheadM, halfWidthM }) => {
    const turned = headingRad - line.headingRad;
    const rearLeftM = (yM - line.yM) * cosLine - (xM - line.xM) * sinLine;
    return sign * (rearLeftM + aheadM * Math.sin(turned)) + halfWidthM * Math.cos(turned) - widthM / 2;
  };
}

/** The place of the line that lies square to a place of the ground. */
export function footOnSide({ widthM }: SwingVehicle, { pose, side }: SideLine, at: Point): Point {
  const { xM, yM, headingRad } = pose;
  const alongM = (at.xM - xM) * Math.cos(headingRad) + (at.yM - yM) * Math.sin(headingRad);
  return onGround(pose, alongM, (signOf(side) * widthM) / 2);
}

/** Less than this counts as a straight wheel where a line is drawn. Radians. */
const STRAIGHT_RAD = 1e-6;

/**
 * The line at a sample: where the wheel was last straight, on the side that goes out (the wheel turned one way sends
 * the corner out on the other); with a straight wheel where the vehicle stands, on the side asked for.
 */
export function sideLineAt(motion: Motion, index: number, straightSide: Side): SideLine {
  let from = Math.min(index, motion.steerRad.length - 1);
  const wheel = wheelSide(motion.steerRad[from]!);
  if (wheel === undefined) return { pose: poseAt(motion, from), side: straightSide };
  while (from > 0 && wheelSide(motion.steerRad[from]!) === wheel) from--;
  return { pose: poseAt(motion, from), side: otherSide(wheel) };
}

/** Where the wheel lies; undefined for straight. */
export function wheelSide(steerRad: number): Side | undefined {
  if (Math.abs(steerRad) <= STRAIGHT_RAD) return undefined;
  return steerRad > 0 ? 'left' : 'right';
}
