import { tailsOf } from './circle.ts';
import type { OutlinePoint } from './swing-beyond.ts';
import type { SwingVehicle } from './swing-vehicle.ts';

/** The nose's corners. */
export function noseOf(vehicle: SwingVehicle): OutlinePoint {
  return { aheadM: vehicle.wheelbaseM + vehicle.frontOverhangM, halfWidthM: vehicle.widthM / 2 };
}

/** The corners of the tail: the body's and, with a rack, the rack's. */
export function tailPointsOf(vehicle: SwingVehicle): readonly OutlinePoint[] {
  return tailsOf(vehicle).map(({ behindM, halfWidthM }) => ({ aheadM: -behindM, halfWidthM }));
}

/**
 * Points whose traces bound the ground swept: the corners, and the sides beside the rear axle, where the body's side
 * touches the edge of what it sweeps (the turning centre lies on the line of the rear axle).
 */
export function outlineOf(vehicle: SwingVehicle): readonly OutlinePoint[] {
  const { rack, rearOverhangM } = vehicle;
  return [
    noseOf(vehicle),
    { aheadM: 0, halfWidthM: vehicle.widthM / 2 },
    ...tailPointsOf(vehicle),
    // a rack that stands out beside the body has front corners too
    ...(rack && rack.widthM > vehicle.widthM
      ? [{ aheadM: -rearOverhangM, halfWidthM: rack.widthM / 2 }]
      : []),
  ];
}
