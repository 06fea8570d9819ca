import { given } from '../given.ts';
import { besidePath, type LaidPath, layPath } from './motion/beside-path.ts';
import { guidedPoint } from './motion/follow.ts';
import type { Guide, GuidePath } from './motion/guide-path.ts';
import { type Motion, type Pose, poseAt } from './motion/motion.ts';
import { reversalsIn, turnsOf } from './motion/turns-of.ts';
import { noseOf, tailPointsOf } from './outline.ts';
import { sweptWidthM } from './swept-width.ts';
import { type OutlinePoint, type Swing, swingBeyond } from './swing-beyond.ts';
import type { SwingVehicle } from './swing-vehicle.ts';

/** What is read off a motion without a path. */
export interface EndSwings {
  /** the tail on the outside of the first turn, beyond the line of that body side before the turn, until the steering first reverses */
  readonly tail: Swing;
  /** the greatest after the steering has reversed, each from the body line at the instant the wheel stood straight */
  readonly tailAfterReversal?: Swing;
  /** the greatest of any later turn, on whichever side, each from the body line as that turn began */
  readonly tailLater?: Swing;
  /** the nose on the outside of the first turn: what swings when reversing */
  readonly nose: Swing;
  readonly steerReversals: number;
  readonly steerMaxRad: number;
  /** least radius of the rear-axle centre; infinite where it never turns */
  readonly rearAxleRadiusMinM: number;
}

/** Beyond the guide path shifted by half the body width, either side of the path. Metres, nothing below 0. */
export interface Beyond {
  readonly leftM: number;
  readonly rightM: number;
}

/** What is read off a motion along a path. */
export interface SwingMeasures extends EndSwings {
  /** body side between the axles, inside of the first turn, beyond the guide path shifted by half the width */
  readonly cutInM: number;
  /** greatest extent of the swept ground along the normal to the guide path */
  readonly sweptWidthM: number;
  /** greatest distance of the rear-axle centre from the guide path */
  readonly offTrackingM: number;
  readonly frontCornerOut: Beyond;
  readonly rearCornerOut: Beyond;
  readonly sideBetweenAxlesOut: Beyond;
  /** travel of the guided point beyond the last arc until off-tracking stays under 50 mm; undefined without an arc */
  readonly settleM?: number;
}

const SETTLED_M = 0.05;

/** How far the ends of the vehicle swing. */
export function measureEnds(vehicle: SwingVehicle, motion: Motion): EndSwings {
  const turns = turnsOf(motion);
  const reversal = turns.find(({ afterReversal }) => afterReversal);
  const start = turns[0]?.began ?? poseAt(motion, 0);
  const firstSpan = {
    from: turns[0]?.from ?? 0,
    to: reversal ? Math.max(0, reversal.from - 1) : motion.travelM.length - 1,
  };
  const outside = turns[0]?.wheel === 'right' ? 'left' : 'right';
  const tails = tailPointsOf(vehicle);
  const swings = turns.map((turn) => ({
    ...turn,
    swing: swingBeyond(
      motion,
      turn,
      turn.began,
      turn.wheel === 'right' ? 'left' : 'right',
      tails,
      vehicle.widthM,
    ),
  }));
  const tailAfterReversal = greatest(swings.filter(({ afterReversal }) => afterReversal));
  const tailLater = greatest(swings.slice(1));
  let steerMaxRad = 0;
  for (const steer of motion.steerRad) steerMaxRad = Math.max(steerMaxRad, Math.abs(steer));
  return {
    tail: swingBeyond(motion, firstSpan, start, outside, tails, vehicle.widthM),
    nose: swingBeyond(motion, firstSpan, start, outside, [noseOf(vehicle)], vehicle.widthM),
    ...given({ tailAfterReversal, tailLater }),
    steerReversals: reversalsIn(turns),
    steerMaxRad,
    rearAxleRadiusMinM:
      steerMaxRad < 1e-9 ? Number.POSITIVE_INFINITY : vehicle.wheelbaseM / Math.tan(steerMaxRad),
  };
}

function greatest(turns: readonly { readonly swing: Swing }[]): Swing | undefined {
  return turns.reduce<Swing | undefined>(
    (most, { swing }) => (most === undefined || swing.swingM > most.swingM ? swing : most),
    undefined,
  );
}

/**
 * Everything that is asked of a motion along a path.
 * @param path the one that was followed, @param guide the point that was kept on it
 * @param start where the path begins, as it was given to `follow`
 */
export function measureSwing(
  vehicle: SwingVehicle,
  motion: Motion,
  path: GuidePath,
  guide: Guide,
  start?: Pose,
): SwingMeasures {
  const ends = measureEnds(vehicle, motion);
  const along = { ...layPath(path, start), motion, ...headingsOf(motion) };
  const first = poseAt(motion, 0);
  // backwards, the vehicle's left is on the path's right
  const facing = Math.cos(first.headingRad - (start?.headingRad ?? 0)) < 0 ? -1 : 1;
  const beyond = (points: readonly OutlinePoint[]): Beyond => beyondBand(vehicle, along, facing, points);
  const sides = beyond(
    [0, 0.5, 1].map((share) => ({ aheadM: share * vehicle.wheelbaseM, halfWidthM: vehicle.widthM / 2 })),
  );
  const insideLeft = (ends.tail.side === 'right') === (facing === 1);
  const rearAxle = beyondBand({ ...vehicle, widthM: 0 }, along, facing, [{ aheadM: 0, halfWidthM: 0 }]);
  const settleM = settleBeyond(vehicle, along, guide, facing);
  return {
    ...ends,
    cutInM: insideLeft ? sides.leftM : sides.rightM,
    sweptWidthM: sweptWidthM(vehicle, motion, along),
    offTrackingM: Math.max(rearAxle.leftM, rearAxle.rightM),
    frontCornerOut: beyond([noseOf(vehicle)]),
    rearCornerOut: beyond(tailPointsOf(vehicle)),
    sideBetweenAxlesOut: sides,
    ...given({ settleM }),
  };
}

/** A motion along a path laid on the ground; its headings' cosines and sines, which every trace asks for. */
interface Along extends LaidPath {
  readonly motion: Motion;
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

function headingsOf({ headingRad }: Motion): { readonly cos: Float64Array; readonly sin: Float64Array } {
  return { cos: headingRad.map(Math.cos), sin: headingRad.map(Math.sin) };
}

/** Where a point of the vehicle ran, told by the path, sample by sample. */
function traceBeside(
  along: Along,
  aheadM: number,
  leftM: number,
): { readonly stationM: Float64Array; readonly besideM: Float64Array } {
  const { motion, cos, sin } = along;
  const place = besidePath(along);
  const stationM = new Float64Array(cos.length);
  const besideM = new Float64Array(cos.length);
  for (let index = 0; index < cos.length; index++) {
    const c = cos[index]!;
    const s = sin[index]!;
    const xM = motion.xM[index]! + aheadM * c - leftM * s;
    const yM = motion.yM[index]! + aheadM * s + leftM * c;
    const found = place(xM, yM);
    stationM[index] = found.stationM;
    besideM[index] = found.leftM;
  }
  return { stationM, besideM };
}

function beyondBand(
  vehicle: SwingVehicle,
  along: Along,
  facing: number,
  points: readonly OutlinePoint[],
): Beyond {
  const mostOn = (sign: 1 | -1): number => {
    let mostM = vehicle.widthM / 2;
    for (const { aheadM, halfWidthM } of points)
      for (const leftM of traceBeside(along, aheadM, sign * facing * halfWidthM).besideM)
        if (sign * leftM > mostM) mostM = sign * leftM;
    return mostM - vehicle.widthM / 2;
  };
  return { leftM: mostOn(1), rightM: mostOn(-1) };
}

/** On the straight after the last arc tan(α/2) falls by exp(−s/a), and the rear axle is a·sin α off the line. */
function settleBeyond(
  vehicle: SwingVehicle,
  { motion, pieces }: Along,
  guide: Guide,
  facing: number,
): number | undefined {
  const { aheadM } = guidedPoint(vehicle, guide);
  const lastArc = pieces.findLast(({ curvature }) => curvature !== 0);
  if (!lastArc || facing < 0) return undefined;
  if (aheadM <= SETTLED_M) return 0;
  const endM = lastArc.fromM + lastArc.lengthM;
  let index = 0;
  while (index < motion.travelM.length - 1 && motion.travelM[index]! < endM - 1e-9) index++;
  const pathHeading = lastArc.headingRad + lastArc.curvature * lastArc.lengthM;
  const alpha = Math.abs(pathHeading - motion.headingRad[index]!);
  const settled = Math.asin(Math.min(1, SETTLED_M / aheadM));
  return Math.max(0, aheadM * Math.log(Math.tan(alpha / 2) / Math.tan(settled / 2)));
}
