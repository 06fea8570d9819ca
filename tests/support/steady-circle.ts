import { swingOfCornerM } from '../../geo/swing/circle.ts';
import { noseOf } from '../../geo/swing/outline.ts';
import type { SwingVehicle } from '../../geo/swing/swing-vehicle.ts';

/*
 * Forms of the steady circle that published tables print and the program itself does not need. R is the radius of the
 * rear-axle centre, metres.
 */

/** Radius of the outer front wheel, the half of "kerb to kerb": √((R + t/2)² + L²). */
export function outerWheelRadiusM(vehicle: SwingVehicle, radiusM: number): number {
  return Math.hypot(radiusM + vehicle.trackM / 2, vehicle.wheelbaseM);
}

/** Least radius of the body: its inner side beside the rear axle, R − W/2; negative where the centre lies under it. */
export function innerSideRadiusM(vehicle: SwingVehicle, radiusM: number): number {
  return radiusM - vehicle.widthM / 2;
}

/** Steady off-tracking, front-axle centre to rear-axle centre: r − √(r² − L²). NaN for r below the wheelbase. */
export function offTrackingM(wheelbaseM: number, frontAxleRadius: number): number {
  return frontAxleRadius - Math.sqrt(frontAxleRadius ** 2 - wheelbaseM ** 2);
}

/** Swing of the nose when reversing from straight at radius R. */
export function noseSwingM(vehicle: SwingVehicle, radiusM: number): number {
  return swingOfCornerM(vehicle, radiusM, noseOf(vehicle));
}
