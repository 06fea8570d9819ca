import type { SwingVehicle } from './swing-vehicle.ts';

/*
 * A rigid vehicle going round one circle, in closed form. R is the radius of the rear-axle centre, metres;
 * the rear axle points at the turning centre, so every point of the body runs on a circle round it.
 * No slip, rectangle body. Derived from plane geometry; SAE J695 and road design manuals use the same forms.
 */

/** Radius of the front-axle centre: √(R² + L²). */
export function frontAxleRadiusM(vehicle: SwingVehicle, radiusM: number): number {
  return Math.hypot(radiusM, vehicle.wheelbaseM);
}

/** Radius of the outer front wheel, the half of "kerb to kerb": √((R + t/2)² + L²). */
export function outerWheelRadiusM(vehicle: SwingVehicle, radiusM: number): number {
  return Math.hypot(radiusM + vehicle.trackM / 2, vehicle.wheelbaseM);
}

/** Radius of the outer front corner of the body: √((R + W/2)² + (L + front overhang)²). */
export function frontCornerRadiusM(vehicle: SwingVehicle, radiusM: number): number {
  return Math.hypot(radiusM + vehicle.widthM / 2, vehicle.wheelbaseM + vehicle.frontOverhangM);
}

/** Least radius of the body: its inner side beside the rear axle, R − W/2; negative where the centre lies under it. */
export function innerSideRadiusM(vehicle: SwingVehicle, radiusM: number): number {
  return radiusM - vehicle.widthM / 2;
}

/** Steady off-tracking, front-axle centre to rear-axle centre: r − √(r² − L²). NaN for r below the wheelbase. */
export function offTrackingM(wheelbaseM: number, frontAxleRadius: number): number {
  return frontAxleRadius - Math.sqrt(frontAxleRadius ** 2 - wheelbaseM ** 2);
}

/**
 * Tail swing of one point of the side, `behindM` behind the rear axle and `halfWidthM` from the middle line, beyond the
 * line of the body side, rear axle on an arc of radius R from straight, after a turn of `turnRad` at most:
 * with θ = min(turn, atan(b / (R + w))), b·sin θ − (R + w)(1 − cos θ) + (w − W/2).
 */
export function swingOfPointM(
  vehicle: SwingVehicle,
  radiusM: number,
  behindM: number,
  halfWidthM = vehicle.widthM / 2,
  turnRad = Number.POSITIVE_INFINITY,
): number {
  const outM = radiusM + halfWidthM;
  const theta = Math.min(turnRad, Math.atan2(behindM, outM));
  return behindM * Math.sin(theta) - outM * (1 - Math.cos(theta)) + halfWidthM - vehicle.widthM / 2;
}

/** Tail swing with the rear axle on an arc of radius R from straight: body corner or rack corner, whichever goes farther. */
export function tailSwingM(vehicle: SwingVehicle, radiusM: number, turnRad?: number): number {
  return Math.max(
    ...tailsOf(vehicle).map(({ behindM, halfWidthM }) =>
      swingOfPointM(vehicle, radiusM, behindM, halfWidthM, turnRad),
    ),
  );
}

/** The most that the tail can swing: wheels hard over from straight ahead. No forward drive from straight exceeds it. */
export function fullLockSwingM(vehicle: SwingVehicle): number {
  return tailSwingM(vehicle, vehicle.lock.rearAxleRadiusM);
}

/** Swing of the nose when reversing from straight at radius R: the same form with L + front overhang. */
export function noseSwingM(vehicle: SwingVehicle, radiusM: number): number {
  return swingOfPointM(vehicle, radiusM, vehicle.wheelbaseM + vehicle.frontOverhangM);
}

/** Outermost points of the tail: the body's rear corner and the rack's, distances from the rear axle and the middle line. */
export function tailsOf(
  vehicle: SwingVehicle,
): readonly { readonly behindM: number; readonly halfWidthM: number; readonly what: 'body' | 'rack' }[] {
  const body = { behindM: vehicle.rearOverhangM, halfWidthM: vehicle.widthM / 2, what: 'body' } as const;
  if (!vehicle.rack) return [body];
  const { lengthM, widthM } = vehicle.rack;
  return [body, { behindM: vehicle.rearOverhangM + lengthM, halfWidthM: widthM / 2, what: 'rack' }];
}
