import { fail, ok, type Result } from '../../result.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import { arcFrom, straightFrom } from './articulation.ts';
import type { Guide, GuidePath, PathPiece } from './guide-path.ts';
import type { Motion, Pose } from './motion.ts';
import { type Recorder, recordMotion } from './record-motion.ts';

export interface FollowOptions {
  /** samples are no farther apart, metres of guided travel; they are exact, whatever the step */
  readonly stepM?: number;
  /** the vehicle runs backwards along the path, its rear leading */
  readonly reverse?: boolean;
  /** where the path begins and which way it sets out; without it the origin, along x */
  readonly start?: Pose;
}

export const STEP_M = 0.05;

/** A point this near to the line of the rear axle lies on it, metres. */
const BESIDE_M = 1e-6;

/** A vehicle this straight on a straight needs few samples, however long it is. */
const SETTLED_RAD = 1e-9;
const SETTLED_STEPS = 200;

/**
 * Drives a vehicle with one of its points kept on a path, the vehicle standing straight along the path before it.
 *
 * With α the angle from the vehicle to the path's direction and a the guided point's distance ahead of the rear axle,
 * the vehicle turns by sin α / a per metre of the guided point (its sideways offset drops out), whatever the speed.
 * Lines and arcs have closed solutions, so every sample is exact; running backwards is the same with −a.
 * A path tighter than the vehicle's full lock is driven all the same; see `pathRearAxleRadiusMinM` of the measures.
 *
 * @returns a problem where an arc cannot be followed by any vehicle of this size (front axle on an arc of a radius of
 * the wheelbase or less), or where the front wheels would stand square to the vehicle
 */
export function follow(
  vehicle: SwingVehicle,
  path: GuidePath,
  guide: Guide,
  options: FollowOptions = {},
): Result<Motion> {
  const { stepM = STEP_M, reverse = false, start = { xM: 0, yM: 0, headingRad: 0 } } = options;
  const point = guidedPoint(vehicle, guide);
  // in the frame that looks along the travel, a vehicle in reverse is guided from the other side of its rear axle
  const aheadM = Math.abs(point.aheadM) < BESIDE_M ? 0 : reverse ? -point.aheadM : point.aheadM;
  const leftM = reverse ? -point.leftM : point.leftM;
  const record = recordMotion();

  let { xM, yM, headingRad } = start;
  let alpha = 0;
  let travelM = 0;
  for (const [index, piece] of path.pieces.entries()) {
    const fault = faultOf(piece, index, aheadM, leftM);
    if (fault !== undefined) return fail('cannot-follow', fault);
    const { lengthM, curvature } = shapeOf(piece);
    const settled = curvature === 0 && Math.abs(alpha) < SETTLED_RAD;
    const wanted = Math.max(1, Math.ceil(lengthM / stepM));
    const steps = settled ? Math.min(wanted, SETTLED_STEPS) : wanted;
    for (let step = index === 0 || aheadM === 0 ? 0 : 1; step <= steps; step++) {
      const s = (lengthM * step) / steps;
      const angle = alphaAt(aheadM, alpha, curvature, s);
      const heading = headingRad + curvature * s;
      const facing = heading - angle;
      const turnPerM = aheadM === 0 ? curvature : Math.sin(angle) / aheadM;
      const rearPerM = Math.cos(angle) + turnPerM * leftM;
      if (!(rearPerM > 0)) return fail('cannot-follow', squareWheels(index));
      const along = alongM(curvature, s);
      const cos = Math.cos(facing);
      const sin = Math.sin(facing);
      record.add(
        travelM + s,
        xM + along.xM * Math.cos(headingRad) - along.yM * Math.sin(headingRad) - aheadM * cos + leftM * sin,
        yM + along.xM * Math.sin(headingRad) + along.yM * Math.cos(headingRad) - aheadM * sin - leftM * cos,
        reverse ? facing + Math.PI : facing,
        Math.atan((vehicle.wheelbaseM * turnPerM) / rearPerM) * (reverse ? -1 : 1),
      );
    }
    const end = alongM(curvature, lengthM);
    const cos = Math.cos(headingRad);
    const sin = Math.sin(headingRad);
    xM += end.xM * cos - end.yM * sin;
    yM += end.xM * sin + end.yM * cos;
    alpha = alphaAt(aheadM, alpha, curvature, lengthM);
    headingRad += curvature * lengthM;
    travelM += lengthM;
  }
  return closed(record);
}

function closed(record: Recorder): Result<Motion> {
  const motion = record.close();
  return motion.travelM.length === 0 ? fail('empty-path', 'The path has no segments.') : ok(motion);
}

/** The guided point in the vehicle's frame. */
export function guidedPoint(
  vehicle: SwingVehicle,
  guide: Guide,
): { readonly aheadM: number; readonly leftM: number } {
  if (guide === 'front axle') return { aheadM: vehicle.wheelbaseM, leftM: 0 };
  if (guide === 'rear axle') return { aheadM: 0, leftM: 0 };
  return guide;
}

/** Length of a piece and its curvature, left positive. */
export function shapeOf(piece: PathPiece): { readonly lengthM: number; readonly curvature: number } {
  if (piece.kind === 'line') return { lengthM: piece.lengthM, curvature: 0 };
  return {
    lengthM: piece.radiusM * Math.abs(piece.turnRad),
    curvature: Math.sign(piece.turnRad) / piece.radiusM,
  };
}

function alphaAt(aheadM: number, alpha: number, curvature: number, s: number): number {
  if (aheadM === 0) return 0;
  return curvature === 0 ? straightFrom(aheadM, alpha, s) : arcFrom(aheadM, alpha, curvature, s);
}

/** Where a piece has led to after s metres, seen from its beginning. */
function alongM(curvature: number, s: number): { readonly xM: number; readonly yM: number } {
  if (curvature === 0) return { xM: s, yM: 0 };
  const half = (curvature * s) / 2;
  const chordM = (2 * Math.sin(half)) / curvature;
  return { xM: chordM * Math.cos(half), yM: chordM * Math.sin(half) };
}

function faultOf(piece: PathPiece, index: number, aheadM: number, leftM: number): string | undefined {
  const { lengthM } = shapeOf(piece);
  if (!(lengthM > 0) || !Number.isFinite(lengthM)) return `Segment ${index + 1} of the path has no length.`;
  if (piece.kind === 'line') return undefined;
  const inner = aheadM === 0 && Math.sign(piece.turnRad) === Math.sign(leftM) ? Math.abs(leftM) : 0;
  const leastM = Math.max(Math.abs(aheadM), inner);
  if (piece.radiusM > leastM) return undefined;
  return `Segment ${index + 1} of the path cannot be followed: an arc of ${piece.radiusM} m is not wider than the ${leastM.toFixed(2)} m from the rear axle to the guided point. Give a wider arc, or let the rear axle follow.`;
}

function squareWheels(index: number): string {
  return `In segment ${index + 1} of the path the front wheels would stand square to the vehicle. Give a wider arc, a shorter one, or let the rear axle follow.`;
}
