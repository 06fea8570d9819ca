import { lockRad } from '../../geo/swing/circle.ts';
import type { SteerPoint } from '../../geo/swing/motion/steer.ts';
import type { SwingVehicle } from '../../geo/swing/swing-vehicle.ts';

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
