import { given } from '../../given.ts';
import { layPath } from '../motion/beside-path.ts';
import { type Guide, type GuidePath, guidedPoint } from '../motion/guide-path.ts';
import { type Motion, ORIGIN, type Pose } from '../motion/motion.ts';
import { noseOf, tailsOf } from '../outline.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import { type Along, type Beyond, beyondBand, rearAxleOffM } from './beside-guide.ts';
import { type EndSwings, measureEnds } from './measure-ends.ts';
import { sweptWidthM } from './swept-width.ts';

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
  start: Pose = ORIGIN,
): SwingMeasures {
  const ends = measureEnds(vehicle, motion);
  const laid = layPath(path, start);
  const facing = Math.cos(motion.headingRad[0]! - start.headingRad) < 0 ? -1 : 1;
  const along: Along = { ...laid, motion, facing };
  const sides = beyondBand(
    vehicle,
    along,
    [0, 0.5, 1].map((share) => ({ aheadM: share * vehicle.wheelbaseM, halfWidthM: vehicle.widthM / 2 })),
  );
  const insideLeft = (ends.tail.side === 'right') === (facing === 1);
  return {
    ...ends,
    cutInM: insideLeft ? sides.leftM : sides.rightM,
    sweptWidthM: sweptWidthM(vehicle, motion, laid),
    offTrackingM: rearAxleOffM(along),
    frontCornerOut: beyondBand(vehicle, along, [noseOf(vehicle)]),
    rearCornerOut: beyondBand(vehicle, along, tailsOf(vehicle)),
    sideBetweenAxlesOut: sides,
    ...given({ settleM: settleBeyond(along, guidedPoint(vehicle, guide).aheadM) }),
  };
}

/** On the straight after the last arc tan(α/2) falls by exp(−s/a), and the rear axle is a·sin α off the line. */
function settleBeyond({ motion, pieces, facing }: Along, aheadM: number): number | undefined {
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
