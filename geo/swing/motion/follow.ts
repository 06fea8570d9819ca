import { fail, ok, type Result } from '../../result.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import { arcFrom, straightFrom } from './articulation.ts';
import { type Guide, type GuidePath, guidedPoint, type PathPiece, shapeOf } from './guide-path.ts';
import { alongArc, type Motion, ORIGIN, type Pose } from './motion.ts';
import { recordMotion } from './record-motion.ts';

export interface FollowOptions {
  /** samples are no farther apart, metres of guided travel; they are exact, whatever the step */
  readonly stepM?: number;
  /** the vehicle runs backwards along the path, its rear leading */
  readonly reverse?: boolean;
  /** where the path begins and which way it sets out; without it the origin, along x */
  readonly start?: Pose;
}

const STEP_M = 0.05;

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
  const { stepM = STEP_M, reverse = false, start = ORIGIN } = options;
  const guided = guidedInTravel(vehicle, { guide, reverse });
  const record = recordMotion();
  let at: OnPath = { ...start, alphaRad: 0, travelM: 0 };
  for (const [index, piece] of path.pieces.entries()) {
    const fault = faultOf(piece, index, guided);
    if (fault !== undefined) return fail('cannot-follow', fault);
    const { lengthM, curvature } = shapeOf(piece);
    const steps = stepsOver(piece, at.alphaRad, stepM);
    for (let step = index === 0 || guided.aheadM === 0 ? 0 : 1; step <= steps; step++) {
      const s = (lengthM * step) / steps;
      const moment = momentAlong(guided, at, curvature, s);
      if (!moment) return fail('cannot-follow', squareWheels(index));
      record.add(moment, at.travelM + s, moment.steerRad);
    }
    at = pastPiece(guided, at, curvature, lengthM);
  }
  const motion = record.motion();
  return motion.travelM.length === 0
    ? fail('empty-path', 'The path has no segments. Give it one at least.')
    : ok(motion);
}

/** The vehicle as it is guided: in the frame that looks along the travel. */
interface Guided {
  /** the guided point, ahead of the rear axle and left of the middle line */
  readonly aheadM: number;
  readonly leftM: number;
  readonly wheelbaseM: number;
  readonly reverse: boolean;
}

/** The guided point on its path: its place, the path's direction there, and the angle from the vehicle to it. */
interface OnPath extends Pose {
  readonly alphaRad: number;
  readonly travelM: number;
}

function guidedInTravel(
  vehicle: SwingVehicle,
  { guide, reverse }: { readonly guide: Guide; readonly reverse: boolean },
): Guided {
  const { aheadM, leftM } = guidedPoint(vehicle, guide);
  // a vehicle in reverse is guided from the other side of its rear axle
  const onAxle = Math.abs(aheadM) < BESIDE_M;
  return {
    aheadM: onAxle ? 0 : reverse ? -aheadM : aheadM,
    leftM: reverse ? -leftM : leftM,
    wheelbaseM: vehicle.wheelbaseM,
    reverse,
  };
}

function stepsOver(piece: PathPiece, alphaRad: number, stepM: number): number {
  const { lengthM, curvature } = shapeOf(piece);
  const wanted = Math.max(1, Math.ceil(lengthM / stepM));
  const settled = curvature === 0 && Math.abs(alphaRad) < SETTLED_RAD;
  return settled ? Math.min(wanted, SETTLED_STEPS) : wanted;
}

/** The vehicle s metres into a piece; undefined where its front wheels would stand square to it. */
function momentAlong(
  guided: Guided,
  at: OnPath,
  curvature: number,
  s: number,
): (Pose & { readonly steerRad: number }) | undefined {
  const { aheadM, leftM, wheelbaseM, reverse } = guided;
  const angle = alphaAt(aheadM, at.alphaRad, curvature, s);
  const facing = at.headingRad + curvature * s - angle;
  const turnPerM = aheadM === 0 ? curvature : Math.sin(angle) / aheadM;
  const rearPerM = Math.cos(angle) + turnPerM * leftM;
  if (!(rearPerM > 0)) return undefined;
  const point = alongArc(at, s, curvature * s);
  const cos = Math.cos(facing);
  const sin = Math.sin(facing);
  return {
    xM: point.xM - aheadM * cos + leftM * sin,
    yM: point.yM - aheadM * sin - leftM * cos,
    headingRad: reverse ? facing + Math.PI : facing,
    steerRad: Math.atan((wheelbaseM * turnPerM) / rearPerM) * (reverse ? -1 : 1),
  };
}

function pastPiece({ aheadM }: Guided, at: OnPath, curvature: number, lengthM: number): OnPath {
  return {
    ...alongArc(at, lengthM, curvature * lengthM),
    alphaRad: alphaAt(aheadM, at.alphaRad, curvature, lengthM),
    travelM: at.travelM + lengthM,
  };
}

function alphaAt(aheadM: number, alpha: number, curvature: number, s: number): number {
  if (aheadM === 0) return 0;
  return curvature === 0 ? straightFrom(aheadM, alpha, s) : arcFrom(aheadM, alpha, curvature, s);
}

function faultOf(piece: PathPiece, index: number, { aheadM, leftM }: Guided): string | undefined {
  const { lengthM } = shapeOf(piece);
  if (!(lengthM > 0) || !Number.isFinite(lengthM))
    return `Segment ${index + 1} of the path has no length. Give it one, or leave it out.`;
  if (piece.kind === 'line') return undefined;
  const inner = aheadM === 0 && Math.sign(piece.turnRad) === Math.sign(leftM) ? Math.abs(leftM) : 0;
  const leastM = Math.max(Math.abs(aheadM), inner);
  if (piece.radiusM > leastM) return undefined;
  return `Segment ${index + 1} of the path cannot be followed: an arc of ${piece.radiusM} m is not wider than the ${leastM.toFixed(2)} m from the rear axle to the guided point. Give a wider arc, or let the rear axle follow.`;
}

function squareWheels(index: number): string {
  return `In segment ${index + 1} of the path the front wheels would stand square to the vehicle. Give a wider arc, a shorter one, or let the rear axle follow.`;
}
