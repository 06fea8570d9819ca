import type { Motion, Pose } from '../../motion/motion.ts';
import { recordMotion } from '../../motion/record-motion.ts';
import { lockRad, type SteerPoint, steer } from '../../motion/steer.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';

/** One stretch with the wheel held still: the steering, left positive, and the way of the rear-axle centre. */
export interface Leg {
  readonly steerRad: number;
  readonly travelM: number;
}

/** The wheel's greatest angle, single track. Radians. */
export const fullLockRad = lockRad;

/** Radius of the rear-axle centre with this share (0…1) of full lock; infinite for none. Metres. */
export function radiusOfShareM(vehicle: SwingVehicle, lockShare: number): number {
  return vehicle.wheelbaseM / Math.tan(lockShare * lockRad(vehicle));
}

/** The legs of an arc (left positive) of the rear-axle centre. */
export function arcLeg(vehicle: SwingVehicle, radiusM: number, turnRad: number): Leg {
  const steerRad = Math.sign(turnRad) * Math.atan(vehicle.wheelbaseM / radiusM);
  return { steerRad, travelM: radiusM * Math.abs(turnRad) };
}

/** A leg with the wheel straight. */
export function straightLeg(travelM: number): Leg {
  return { steerRad: 0, travelM };
}

/** Drives the legs one after another; the wheel is turned standing, so a change of steering is two samples at one place. */
export function driveLegs(
  vehicle: SwingVehicle,
  start: Pose,
  legs: readonly Leg[],
  reverse: boolean,
): Motion {
  const points: SteerPoint[] = [];
  let travelM = 0;
  for (const { steerRad, travelM: wayM } of legs) {
    if (!(wayM > 0)) continue;
    points.push({ travelM, steerRad }, { travelM: travelM + wayM, steerRad });
    travelM += wayM;
  }
  return steer(vehicle, { points, reverse, start });
}

/**
 * Where the vehicle stands after a step with the wheel held: an exact arc of the rear-axle centre.
 * @param steerRad left positive
 * @param travelM of the rear-axle centre, negative backwards
 */
export function stepBy(vehicle: SwingVehicle, pose: Pose, steerRad: number, travelM: number): Pose {
  const turnRad = (travelM * Math.tan(steerRad)) / vehicle.wheelbaseM;
  // the chord of the arc along its middle heading: no division by a curvature that may be nought
  const half = turnRad / 2;
  const chordM = half === 0 ? travelM : (travelM * Math.sin(half)) / half;
  return {
    xM: pose.xM + chordM * Math.cos(pose.headingRad + half),
    yM: pose.yM + chordM * Math.sin(pose.headingRad + half),
    headingRad: pose.headingRad + turnRad,
  };
}

/** Way of the rear-axle centre from the sample before to this one, negative backwards; 0 where only the wheel turned. */
export function stepInto(motion: Motion, index: number): number {
  if (index === 0) return 0;
  const dx = motion.xM[index]! - motion.xM[index - 1]!;
  const dy = motion.yM[index]! - motion.yM[index - 1]!;
  const middle = (motion.headingRad[index]! + motion.headingRad[index - 1]!) / 2;
  const half = (motion.headingRad[index]! - motion.headingRad[index - 1]!) / 2;
  const chordM = dx * Math.cos(middle) + dy * Math.sin(middle);
  return half === 0 ? chordM : (chordM * half) / Math.sin(half);
}

/** A drive by hand that is being recorded, sample by sample. */
export interface HandDrive {
  readonly pose: () => Pose;
  /** turns the wheel, standing; left positive */
  readonly steer: (steerRad: number) => void;
  /** rolls with the wheel as it is, backwards negative: an exact arc */
  readonly roll: (travelM: number) => void;
  /** all that was driven so far */
  readonly motion: () => Motion;
}

/** Puts the vehicle at a pose under the hand, wheels straight. */
export function takeWheel(vehicle: SwingVehicle, start: Pose): HandDrive {
  const record = recordMotion();
  let pose = start;
  let steerRad = 0;
  let travelM = 0;
  const note = (): void => record.add(travelM, pose.xM, pose.yM, pose.headingRad, steerRad);
  note();
  return {
    pose: () => pose,
    steer: (nextRad) => {
      if (nextRad === steerRad) return;
      steerRad = nextRad;
      note();
    },
    roll: (byM) => {
      pose = stepBy(vehicle, pose, steerRad, byM);
      travelM += Math.abs(byM);
      note();
    },
    motion: record.close,
  };
}
