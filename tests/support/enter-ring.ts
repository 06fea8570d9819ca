import { ok, type Result } from '../../geo/result.ts';
import { measureEnds } from '../../geo/swing/measure/measure-ends.ts';
import type { Swing } from '../../geo/swing/measure/swing-beyond.ts';
import { follow } from '../../geo/swing/motion/follow.ts';
import { boxesOf, noseOf } from '../../geo/swing/outline.ts';
import type { SwingVehicle } from '../../geo/swing/swing-vehicle.ts';

/** The ring of German law (StVZO section 32d): outer radius, and how wide the vehicle's ring may be. Metres. */
export const RING_OUTER_M = 12.5;
export const RING_WIDTH_M = 7.2;

/** A vehicle driven from the tangent straight into the ring, its outer front corner on the outer circle. Metres. */
export interface RingEntry {
  readonly tail: Swing;
  /** once round: radius of the rear-axle centre, of the innermost and the outermost point */
  readonly rearAxleRadiusM: number;
  readonly innerRadiusM: number;
  readonly outerRadiusM: number;
  readonly ringWidthM: number;
  /** nothing outside the outer circle, and the ring no wider than allowed */
  readonly insideRing: boolean;
  /** the wheel need not go beyond full lock */
  readonly withinLock: boolean;
}

/**
 * The ring manoeuvre: along a straight, then round a circle of `outerRadiusM` to the left, the outer front corner kept
 * on both. @returns a problem where the vehicle is too long for the circle
 */
export function enterRing(vehicle: SwingVehicle, outerRadiusM = RING_OUTER_M): Result<RingEntry> {
  const { aheadM, halfWidthM } = noseOf(vehicle);
  const path = { pieces: [{ kind: 'arc', radiusM: outerRadiusM, turnRad: 2 * Math.PI } as const] };
  const motion = follow(vehicle, path, { aheadM, leftM: -halfWidthM });
  if (!motion.ok) return motion;
  const { tail } = measureEnds(vehicle, motion.value);
  const rearAxleRadiusM = Math.sqrt(outerRadiusM ** 2 - aheadM ** 2) - halfWidthM;
  const innerRadiusM = rearAxleRadiusM - vehicle.widthM / 2;
  const outermostM = Math.max(
    ...boxesOf(vehicle).flatMap(({ backM, frontM, halfWidthM }) =>
      [backM, frontM].map((along) => Math.hypot(rearAxleRadiusM + halfWidthM, along)),
    ),
  );
  const ringWidthM = outermostM - innerRadiusM;
  return ok({
    tail,
    rearAxleRadiusM,
    innerRadiusM,
    outerRadiusM: outermostM,
    ringWidthM,
    insideRing: outermostM <= outerRadiusM + 1e-9 && ringWidthM <= RING_WIDTH_M,
    withinLock: rearAxleRadiusM >= vehicle.lock.rearAxleRadiusM - 1e-9,
  });
}
