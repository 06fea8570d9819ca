import { largest } from '../lists.ts';
import { type OutlineCorner, tailsOf } from './outline.ts';
import type { SwingVehicle } from './swing-vehicle.ts';

/*
 * A rigid vehicle going round one circle, in closed form. R is the radius of the rear-axle centre, metres;
 * the rear axle points at the turning centre, so every point of the body runs on a circle round it.
 * No slip, rectangle body. Derived from plane geometry; SAE J695 and road design manuals use the same forms.
 */

/** Wheels this near to straight turn round no centre. Radians. */
const STRAIGHT_RAD = 1e-6;

/** Single-track steering angle that goes round a circle: tan δ = L / R. Radians. */
export function steerOfRadiusRad({ wheelbaseM }: SwingVehicle, radiusM: number): number {
  return Math.atan(wheelbaseM / radiusM);
}

/** The wheel's greatest angle, at full lock. Radians. */
export function lockRad(vehicle: SwingVehicle): number {
  return steerOfRadiusRad(vehicle, vehicle.lock.rearAxleRadiusM);
}

/** Radius of the rear-axle centre with this share (0…1) of full lock; infinite for none. Metres. */
export function radiusOfShareM(vehicle: SwingVehicle, lockShare: number): number {
  return vehicle.wheelbaseM / Math.tan(lockShare * lockRad(vehicle));
}

/** Radius of the front-axle centre: √(R² + L²). */
export function frontAxleRadiusM(vehicle: SwingVehicle, radiusM: number): number {
  return Math.hypot(radiusM, vehicle.wheelbaseM);
}

/** Radius of the outer front corner of the body: √((R + W/2)² + (L + front overhang)²). */
export function frontCornerRadiusM(vehicle: SwingVehicle, radiusM: number): number {
  return Math.hypot(radiusM + vehicle.widthM / 2, vehicle.wheelbaseM + vehicle.frontOverhangM);
}

/**
 * Swing of one corner, b from the rear axle and w from the middle line, beyond the line of the body side, rear axle on an
 * arc of radius R from straight, after a turn of `turnRad` at most: going forward a corner behind the axle, reversing
 * one ahead of it. With θ = min(turn, atan(b / (R + w))), b·sin θ − (R + w)(1 − cos θ) + (w − W/2).
 */
export function swingOfCornerM(
  vehicle: SwingVehicle,
  radiusM: number,
  { aheadM, halfWidthM }: Omit<OutlineCorner, 'what'>,
  turnRad = Number.POSITIVE_INFINITY,
): number {
  const fromAxleM = Math.abs(aheadM);
  const outM = radiusM + halfWidthM;
  const theta = Math.min(turnRad, Math.atan2(fromAxleM, outM));
  return fromAxleM * Math.sin(theta) - outM * (1 - Math.cos(theta)) + halfWidthM - vehicle.widthM / 2;
}

/** Tail swing with the rear axle on an arc of radius R from straight: body corner or rack corner, whichever goes farther. */
export function tailSwingM(vehicle: SwingVehicle, radiusM: number, turnRad?: number): number {
  return largest(tailsOf(vehicle).map((corner) => swingOfCornerM(vehicle, radiusM, corner, turnRad)));
}

/** The most that the tail can swing: wheels hard over from straight ahead. No forward drive from straight exceeds it. */
export function fullLockSwingM(vehicle: SwingVehicle): number {
  return tailSwingM(vehicle, vehicle.lock.rearAxleRadiusM);
}

/**
 * How far one front wheel is turned, each square to the turning centre. Radians, left positive.
 * @param steerRad single-track steering angle; @param leftM where the wheel is, left of the middle line
 */
export function frontWheelRad({ wheelbaseM }: SwingVehicle, steerRad: number, leftM: number): number {
  if (Math.abs(steerRad) < STRAIGHT_RAD) return steerRad;
  return Math.atan(wheelbaseM / (wheelbaseM / Math.tan(steerRad) - leftM));
}
