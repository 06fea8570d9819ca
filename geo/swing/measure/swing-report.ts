import { given } from '../../given.ts';
import type { LockSource } from '../../vehicle/lock/full-lock.ts';
import { fullLockSwingM } from '../circle.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import type { SwingMeasures } from './measure-swing.ts';

/** What is printed of a vehicle driven along a path. Metres; each figure by the definition of the measure of its name. */
export interface SwingReport {
  readonly tailSwingM: number;
  /** the greatest of any later turn, from the body line as that turn began; only where there is one */
  readonly laterTailSwingM?: number;
  readonly cutInM: number;
  readonly sweptWidthM: number;
  /** the greater of both sides */
  readonly frontCornerOutM: number;
  readonly offTrackingM: number;
  /** the vehicle's own, at full lock */
  readonly rearAxleRadiusMinM: number;
  /** where it may lie; only where it was measured in the yard */
  readonly rearAxleRadiusMinFromM?: number;
  readonly rearAxleRadiusMinToM?: number;
  readonly fullLockSwingM: number;
  /** what the path asks for; null where it never turns */
  readonly pathRearAxleRadiusMinM: number | null;
  readonly tighterThanFullLock: boolean;
  readonly fullLockFrom: LockSource;
}

/** A path drawn to the card's own radius is not tighter than full lock for its last digit. */
const SLACK = 1e-6;

/** The figures of a driven path, and whether the vehicle's lock allows it. */
export function reportSwing(vehicle: SwingVehicle, measures: SwingMeasures): SwingReport {
  const { lock } = vehicle;
  const { tail, tailLater, frontCornerOut, rearAxleRadiusMinM: pathM } = measures;
  return {
    tailSwingM: tail.swingM,
    ...given({ laterTailSwingM: tailLater?.swingM }),
    cutInM: measures.cutInM,
    sweptWidthM: measures.sweptWidthM,
    frontCornerOutM: Math.max(frontCornerOut.leftM, frontCornerOut.rightM),
    offTrackingM: measures.offTrackingM,
    rearAxleRadiusMinM: lock.rearAxleRadiusM,
    ...(lock.from === 'measured'
      ? { rearAxleRadiusMinFromM: lock.lowM, rearAxleRadiusMinToM: lock.highM }
      : {}),
    fullLockSwingM: fullLockSwingM(vehicle),
    pathRearAxleRadiusMinM: Number.isFinite(pathM) ? pathM : null,
    tighterThanFullLock: pathM < lock.rearAxleRadiusM * (1 - SLACK),
    fullLockFrom: lock.from,
  };
}
