import { tailsOf } from '../../../geo/swing/circle.ts';
import type { Point, Scene } from '../../../geo/swing/lessons/scene.ts';
import { type Motion, onGround, type Pose, poseAt } from '../../../geo/swing/motion/motion.ts';
import type { SwingVehicle } from '../../../geo/swing/swing-vehicle.ts';
import type { Frame } from '../frames.ts';

/** A corner of the outline, in the vehicle's frame. Metres ahead of the rear axle and left of the middle line. */
export interface Corner {
  readonly aheadM: number;
  readonly leftM: number;
}

export type Side = 'left' | 'right';
export const signOf = (side: Side): 1 | -1 => (side === 'left' ? 1 : -1);

/** Less than this counts as a straight wheel. Radians. */
const STRAIGHT_RAD = 1e-6;
export const isStraight = (steerRad: number): boolean => Math.abs(steerRad) <= STRAIGHT_RAD;

/** The corners whose swing is watched: body and rack at the tail, reversing the nose. */
export function swingingCorners(vehicle: SwingVehicle, side: Side, reversing: boolean): readonly Corner[] {
  const sign = signOf(side);
  if (reversing)
    return [{ aheadM: vehicle.wheelbaseM + vehicle.frontOverhangM, leftM: (sign * vehicle.widthM) / 2 }];
  return tailsOf(vehicle).map(({ behindM, halfWidthM }) => ({ aheadM: -behindM, leftM: sign * halfWidthM }));
}

/** The line a swing is read from: the body's side on the side that goes out, as it lay when the wheel was last straight. */
export interface SideLine {
  readonly pose: Pose;
  readonly side: Side;
}

/** At a sample; the wheel turned one way sends the corner out on the other. */
export function sideLineAt(scene: Scene, index: number): SideLine {
  const { motion } = scene;
  let from = Math.min(index, motion.steerRad.length - 1);
  const steerRad = motion.steerRad[from]!;
  if (isStraight(steerRad)) return { pose: poseAt(motion, from), side: scene.swingSide };
  const sign = Math.sign(steerRad);
  while (from > 0 && motion.steerRad[from]! * sign > STRAIGHT_RAD) from--;
  return { pose: poseAt(motion, from), side: sign > 0 ? 'right' : 'left' };
}

/** How far a place of the ground lies beyond such a line. Metres. */
export function beyondLineM({ pose, side }: SideLine, widthM: number, at: Point): number {
  const leftM =
    -Math.sin(pose.headingRad) * (at.xM - pose.xM) + Math.cos(pose.headingRad) * (at.yM - pose.yM);
  return signOf(side) * leftM - widthM / 2;
}

/** The place of the line that lies square to a place of the ground. */
export function footOnLine(line: SideLine, widthM: number, at: Point): Point {
  const out = signOf(line.side) * beyondLineM(line, widthM, at);
  const { headingRad } = line.pose;
  return { xM: at.xM + Math.sin(headingRad) * out, yM: at.yM - Math.cos(headingRad) * out };
}

/** The swing at one moment: the corner that is farthest out, and how far beyond which line. */
export interface SwingNow {
  readonly line: SideLine;
  readonly corner: Point;
  readonly foot: Point;
  readonly outM: number;
}

/** The corner farthest out at a moment, beyond the line of the side. */
export function swingNow(scene: Scene, frame: Frame): SwingNow {
  const { vehicle, reversing } = scene;
  const line = sideLineAt(scene, frame.index);
  const places = swingingCorners(vehicle, line.side, reversing).map(({ aheadM, leftM }) =>
    onGround(frame.pose, aheadM, leftM),
  );
  const out = (at: Point) => beyondLineM(line, vehicle.widthM, at);
  const corner = places.reduce((far, at) => (out(at) > out(far) ? at : far));
  return { line, corner, foot: footOnLine(line, vehicle.widthM, corner), outM: out(corner) };
}

/** A little of the line beyond both ends of the vehicle, for drawing it. */
export function drawnLine(vehicle: SwingVehicle, { pose, side }: SideLine, reversing: boolean): Point[] {
  const leftM = (signOf(side) * vehicle.widthM) / 2;
  const tail = -vehicle.rearOverhangM - (vehicle.rack?.lengthM ?? 0);
  const nose = vehicle.wheelbaseM + vehicle.frontOverhangM;
  const [from, to] = reversing ? [tail - 5, nose + 1.5] : [tail - 1.5, nose + 5];
  return [onGround(pose, from, leftM), onGround(pose, to, leftM)];
}

/** Where one point of the vehicle went, a place a sample. */
export function traceOf(motion: Motion, { aheadM, leftM }: Corner): Point[] {
  return Array.from(motion.xM, (_, i) => onGround(poseAt(motion, i), aheadM, leftM));
}

/** The vehicle's outline on the ground, rack and all, corner by corner. */
export function outlineAt(vehicle: SwingVehicle, pose: Pose): Point[] {
  const half = vehicle.widthM / 2;
  const nose = vehicle.wheelbaseM + vehicle.frontOverhangM;
  const tail = -vehicle.rearOverhangM;
  const { rack } = vehicle;
  const behind: readonly (readonly [number, number])[] = rack
    ? [
        [tail, rack.widthM / 2],
        [tail - rack.lengthM, rack.widthM / 2],
        [tail - rack.lengthM, -rack.widthM / 2],
        [tail, -rack.widthM / 2],
      ]
    : [];
  const corners: readonly (readonly [number, number])[] = [
    [nose, -half],
    [nose, half],
    [tail, half],
    ...behind,
    [tail, -half],
  ];
  return corners.map(([aheadM, leftM]) => onGround(pose, aheadM, leftM));
}
