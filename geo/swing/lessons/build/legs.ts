import { steerOfRadiusRad } from '../../circle.ts';
import type { Motion } from '../../motion/motion.ts';
import { type SteerPoint, steer } from '../../motion/steer.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Draft, Leg } from './draft.ts';

/** The leg of an arc (left positive) of the rear-axle centre. */
export function arcLeg(vehicle: SwingVehicle, radiusM: number, turnRad: number): Leg {
  return {
    steerRad: Math.sign(turnRad) * steerOfRadiusRad(vehicle, radiusM),
    travelM: radiusM * Math.abs(turnRad),
  };
}

/** A leg with the wheel straight. */
export function straightLeg(travelM: number): Leg {
  return { steerRad: 0, travelM };
}

/** Drives the legs one after another; the wheel is turned standing, so a change of steering is two samples at one place. */
export function driveLegs(
  vehicle: SwingVehicle,
  { start, legs, reversing = false }: Pick<Draft, 'start' | 'legs'> & { readonly reversing?: boolean },
): Motion {
  const points: SteerPoint[] = [];
  let travelM = 0;
  for (const { steerRad, travelM: wayM } of legs) {
    if (!(wayM > 0)) continue;
    points.push({ travelM, steerRad }, { travelM: travelM + wayM, steerRad });
    travelM += wayM;
  }
  return steer(vehicle, { points, reverse: reversing, start });
}
