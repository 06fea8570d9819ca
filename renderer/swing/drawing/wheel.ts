import type { SwingVehicle } from '../../../geo/swing/swing-vehicle.ts';

export const TYRE_LONG_M = 0.66;
export const TYRE_WIDE_M = 0.22;

/** The tyre of one front wheel about its own middle. */
export const TYRE_PATH = `M${-TYRE_LONG_M / 2} ${-TYRE_WIDE_M / 2}h${TYRE_LONG_M}v${TYRE_WIDE_M}h${-TYRE_LONG_M}Z`;

/**
 * How far one front wheel is turned, each square to the turning centre.
 * @param steerRad single-track steering angle; @param leftM where the wheel is, left of the middle line
 */
export function wheelTurnRad(vehicle: SwingVehicle, steerRad: number, leftM: number): number {
  if (Math.abs(steerRad) < 1e-6) return steerRad;
  const radiusM = vehicle.wheelbaseM / Math.tan(steerRad);
  return Math.atan(vehicle.wheelbaseM / (radiusM - leftM));
}
