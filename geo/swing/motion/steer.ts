import { lockRad } from '../circle.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import { alongArc, type Motion, ORIGIN, type Pose } from './motion.ts';
import { recordMotion } from './record-motion.ts';

/** The wheel at a place of the rear axle's travel. Radians left positive, single-track. */
export interface SteerPoint {
  readonly travelM: number;
  readonly steerRad: number;
}

/** How the wheel is turned while the vehicle rolls. */
interface SteeringProgram {
  /** travel never falling; the wheel moves evenly between two points, and at once where two have the same travel */
  readonly points: readonly SteerPoint[];
  /** rolls backwards; travel is counted all the same */
  readonly reverse?: boolean;
  readonly start?: Pose;
  /** samples are no farther apart, metres */
  readonly stepM?: number;
}

const STEP_M = 0.05;

/**
 * Rolls a vehicle with its wheel turned as told; angles beyond full lock are taken at full lock.
 * The rear axle's heading turns by tan δ / L per metre.
 */
export function steer(vehicle: SwingVehicle, program: SteeringProgram): Motion {
  const { points, reverse = false, start = ORIGIN, stepM = STEP_M } = program;
  const most = lockRad(vehicle);
  const held = (rad: number): number => Math.max(-most, Math.min(most, rad));
  const record = recordMotion();
  let from = points[0] ?? { travelM: 0, steerRad: 0 };
  let pose = start;
  record.add(pose, from.travelM, held(from.steerRad));
  for (const to of points.slice(1)) {
    const lengthM = to.travelM - from.travelM;
    if (lengthM > 0) {
      const steps = Math.ceil(lengthM / stepM);
      const { steerRad: fromRad, travelM } = from;
      const steerAt = (step: number): number => held(fromRad + ((to.steerRad - fromRad) * step) / steps);
      for (let step = 1; step <= steps; step++) {
        const bendAt = (at: number): number => Math.tan(steerAt(at)) / vehicle.wheelbaseM;
        const bends = [bendAt(step - 1), bendAt(step - 0.5), bendAt(step)] as const;
        pose = rolled(pose, bends, ((reverse ? -1 : 1) * lengthM) / steps);
        // the end itself, not a rounding error beyond it: travel never falls
        const atM = step === steps ? to.travelM : travelM + (lengthM * step) / steps;
        record.add(pose, atM, steerAt(step));
      }
    } else if (held(from.steerRad) !== held(to.steerRad)) record.add(pose, from.travelM, held(to.steerRad));
    from = to;
  }
  return record.motion();
}

/**
 * One step along a path of these curvatures at its beginning, middle and end. Held still it gives an exact arc; turned,
 * it is one of the classical fourth-order Runge-Kutta method, at 0.05 m off by less than 1e-7 m over 100 m.
 * @param travelM backwards negative
 */
function rolled(from: Pose, [k0, k1, k2]: readonly [number, number, number], travelM: number): Pose {
  // headings at the middle and the end; Simpson's rule is what Runge-Kutta does where the slope depends on s alone
  const turnRad = (travelM * (k0 + 4 * k1 + k2)) / 6;
  if (k0 === k1 && k1 === k2) return alongArc(from, travelM, turnRad);
  const { xM, yM, headingRad } = from;
  const middle = headingRad + (travelM * (5 * k0 + 8 * k1 - k2)) / 24;
  const end = headingRad + turnRad;
  return {
    xM: xM + (travelM * (Math.cos(headingRad) + 4 * Math.cos(middle) + Math.cos(end))) / 6,
    yM: yM + (travelM * (Math.sin(headingRad) + 4 * Math.sin(middle) + Math.sin(end))) / 6,
    headingRad: end,
  };
}
