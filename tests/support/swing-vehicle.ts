import type { SwingVehicle } from '../../geo/swing/swing-vehicle.ts';

/** A vehicle in plan with a known full lock; the 7.4 m coach-built where nothing else is said. */
export function swingVehicle(
  sizes: Partial<Omit<SwingVehicle, 'lock'>> & { readonly lockM?: number } = {},
): SwingVehicle {
  const { lockM = 4.985, ...given } = sizes;
  return {
    name: 'Coach-built 7.4',
    wheelbaseM: 4.035,
    frontOverhangM: 0.95,
    rearOverhangM: 2.42,
    widthM: 2.32,
    trackM: 1.81,
    ...given,
    lock: { rearAxleRadiusM: lockM, lowM: lockM, highM: lockM, from: 'rear-axle radius' },
  };
}

export const RAD = Math.PI / 180;
export const DEG = 180 / Math.PI;
