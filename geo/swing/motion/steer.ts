import type { SwingVehicle } from '../swing-vehicle.ts';
import type { Motion, Pose } from './motion.ts';
import { recordMotion } from './record-motion.ts';

/** The wheel at a place of the rear axle's travel. Radians left positive, single-track. */
export interface SteerPoint {
  readonly travelM: number;
  readonly steerRad: number;
}

/** How the wheel is turned while the vehicle rolls. */
export interface SteeringProgram {
  /** travel never falling; the wheel moves evenly between two points, and at once where two have the same travel */
  readonly points: readonly SteerPoint[];
  /** rolls backwards; travel is counted all the same */
  readonly reverse?: boolean;
  readonly start?: Pose;
  /** samples are no farther apart, metres */
  readonly stepM?: number;
}

const STEP_M = 0.05;

/** The wheel's greatest angle: tan δ = L / R at full lock. */
export function lockRad(vehicle: SwingVehicle): number {
  return Math.atan(vehicle.wheelbaseM / vehicle.lock.rearAxleRadiusM);
}

/**
 * The points of turning the wheel evenly from straight to a share of full lock and holding it.
 * Only speed × time matters: the metres rolled while the wheel goes from the middle to the lock.
 * @param how lockShare −1…1, left positive; straightM rolled first; travelM in all
 */
export function turnToLock(
  vehicle: SwingVehicle,
  how: {
    readonly speedMS: number;
    readonly centreToLockS: number;
    readonly lockShare?: number;
    readonly straightM?: number;
    readonly travelM: number;
  },
): readonly SteerPoint[] {
  const { speedMS, centreToLockS, lockShare = 1, straightM = 0, travelM } = how;
  const steerRad = lockShare * lockRad(vehicle);
  const turnedM = straightM + speedMS * centreToLockS * Math.abs(lockShare);
  return [
    { travelM: 0, steerRad: 0 },
    { travelM: straightM, steerRad: 0 },
    { travelM: turnedM, steerRad },
    { travelM: Math.max(travelM, turnedM), steerRad },
  ];
}

/**
 * Rolls a vehicle with its wheel turned as told; angles beyond full lock are taken at full lock.
 * The rear axle's heading turns by tan δ / L per metre. A wheel held still gives exact arcs; while it turns, each step
 * is one of the classical fourth-order Runge-Kutta method, at 0.05 m off by less than 1e-7 m over 100 m.
 */
export function steer(vehicle: SwingVehicle, program: SteeringProgram): Motion {
  const { points, reverse = false, start = { xM: 0, yM: 0, headingRad: 0 }, stepM = STEP_M } = program;
  const most = lockRad(vehicle);
  const held = (rad: number): number => Math.max(-most, Math.min(most, rad));
  const record = recordMotion();
  let { xM, yM, headingRad } = start;
  const first = points[0] ?? { travelM: 0, steerRad: 0 };
  record.add(first.travelM, xM, yM, headingRad, held(first.steerRad));
  for (let index = 1; index < points.length; index++) {
    const from = points[index - 1] as SteerPoint;
    const to = points[index] as SteerPoint;
    const lengthM = to.travelM - from.travelM;
    if (!(lengthM > 0)) {
      if (held(from.steerRad) !== held(to.steerRad))
        record.add(from.travelM, xM, yM, headingRad, held(to.steerRad));
      continue;
    }
    const steps = Math.ceil(lengthM / stepM);
    const ds = ((reverse ? -1 : 1) * lengthM) / steps;
    const steerAt = (step: number): number =>
      held(from.steerRad + ((to.steerRad - from.steerRad) * step) / steps);
    for (let step = 0; step < steps; step++) {
      const [k0, k1, k2] = [step, step + 0.5, step + 1].map(
        (at) => Math.tan(steerAt(at)) / vehicle.wheelbaseM,
      ) as [number, number, number];
      // headings at the middle and the end; Simpson's rule is what Runge-Kutta does where the slope depends on s alone
      const middle = headingRad + (ds * (5 * k0 + 8 * k1 - k2)) / 24;
      const end = headingRad + (ds * (k0 + 4 * k1 + k2)) / 6;
      if (k0 === k1 && k1 === k2) {
        const half = (end - headingRad) / 2;
        const chord = half === 0 ? ds : (ds * Math.sin(half)) / half;
        xM += chord * Math.cos(headingRad + half);
        yM += chord * Math.sin(headingRad + half);
      } else {
        xM += (ds * (Math.cos(headingRad) + 4 * Math.cos(middle) + Math.cos(end))) / 6;
        yM += (ds * (Math.sin(headingRad) + 4 * Math.sin(middle) + Math.sin(end))) / 6;
      }
      headingRad = end;
      // the end itself, not a rounding error beyond it: travel never falls
      const travelM = step + 1 === steps ? to.travelM : from.travelM + (lengthM * (step + 1)) / steps;
      record.add(travelM, xM, yM, headingRad, steerAt(step + 1));
    }
  }
  return record.close();
}
