import type { Motion, Pose } from '../motion.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';

/** One stretch with the wheel held still: the steering, and the way of the rear-axle centre, backwards negative. */
export interface Leg {
  readonly steerRad: number;
  readonly travelM: number;
}

/** Way between two samples: fine enough for a smooth picture, and arcs are exact between them anyway. Metres. */
const STEP_M = 0.05;

/** The steering angle at full lock, single track: tan δ = L / R. */
export function fullLockRad(vehicle: SwingVehicle): number {
  return Math.atan(vehicle.wheelbaseM / vehicle.lock.rearAxleRadiusM);
}

/** Radius of the rear-axle centre with this share (0…1) of full lock; infinite for none. Metres. */
export function radiusOfShareM(vehicle: SwingVehicle, lockShare: number): number {
  return vehicle.wheelbaseM / Math.tan(lockShare * fullLockRad(vehicle));
}

/** The steering that puts the rear-axle centre on a radius, left positive. Radians. */
export function steerOfRadius(vehicle: SwingVehicle, radiusM: number): number {
  return Math.atan(vehicle.wheelbaseM / radiusM);
}

/**
 * Where the vehicle stands after a step with the wheel held: an exact arc of the rear-axle centre.
 * @param steerRad left positive
 * @param travelM of the rear-axle centre, negative backwards
 */
export function stepBy(vehicle: SwingVehicle, pose: Pose, steerRad: number, travelM: number): Pose {
  const turnRad = (travelM * Math.tan(steerRad)) / vehicle.wheelbaseM;
  // the chord of the arc, along its middle heading: no division by a curvature that may be nought
  const half = turnRad / 2;
  const chordM = travelM * (Math.abs(half) < 1e-6 ? 1 : Math.sin(half) / half);
  return {
    xM: pose.xM + chordM * Math.cos(pose.headingRad + half),
    yM: pose.yM + chordM * Math.sin(pose.headingRad + half),
    headingRad: pose.headingRad + turnRad,
  };
}

/**
 * Drives the legs one after another; the wheel is turned standing, so a change of steering is two samples at one place.
 * The step up to a sample was driven with that sample's steering.
 */
export function driveLegs(vehicle: SwingVehicle, start: Pose, legs: readonly Leg[]): Motion {
  const hand = takeWheel(vehicle, start, legs[0]?.steerRad ?? 0);
  for (const { steerRad, travelM } of legs) {
    const steps = Math.ceil(Math.abs(travelM) / STEP_M);
    const from = hand.pose();
    hand.steer(steerRad);
    for (let step = 1; step <= steps; step++) {
      // from the leg's beginning each time: no error adds up
      hand.moveTo(stepBy(vehicle, from, steerRad, (travelM * step) / steps), Math.abs(travelM) / steps);
    }
  }
  return hand.motion();
}

/** A drive that is being recorded, sample by sample. */
export interface HandDrive {
  readonly pose: () => Pose;
  /** turns the wheel, standing */
  readonly steer: (steerRad: number) => void;
  /** drives a step with the wheel as it is, backwards negative: an exact arc */
  readonly roll: (travelM: number) => void;
  readonly moveTo: (pose: Pose, travelM: number) => void;
  /** all that was driven so far */
  readonly motion: () => Motion;
}

/** Begins a drive at a pose; `steer` and `roll` continue it, `motion` hands it over at any time. */
export function takeWheel(vehicle: SwingVehicle, start: Pose, startSteerRad = 0): HandDrive {
  let pose = start;
  let steerRad = startSteerRad;
  let travelM = 0;
  const samples: number[] = [];
  const note = (): void => {
    samples.push(travelM, pose.xM, pose.yM, pose.headingRad, steerRad);
  };
  const moveTo = (next: Pose, byM: number): void => {
    pose = next;
    travelM += byM;
    note();
  };
  note();
  return {
    pose: () => pose,
    steer: (nextRad) => {
      if (nextRad === steerRad) return;
      steerRad = nextRad;
      note();
    },
    roll: (byM) => moveTo(stepBy(vehicle, pose, steerRad, byM), Math.abs(byM)),
    moveTo,
    motion: () => motionOf(samples),
  };
}

function motionOf(samples: readonly number[]): Motion {
  const count = samples.length / 5;
  const column = (at: number): Float64Array =>
    Float64Array.from({ length: count }, (_, index) => samples[index * 5 + at] as number);
  return { travelM: column(0), xM: column(1), yM: column(2), headingRad: column(3), steerRad: column(4) };
}
