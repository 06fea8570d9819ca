import { radiusOfSwingM } from '../vehicle/lock/radius-of-swing.ts';
import { lockRad, steerOfRadiusRad } from './circle.ts';
import { swingingCorners } from './outline.ts';
import type { SwingVehicle } from './swing-vehicle.ts';

/*
 * Swing asked the other way round, in closed form. The vehicle stands straight; the wheel is turned standing and held;
 * R is the radius of the rear-axle centre, metres. Going forward the tail's corners come out on the side away from the
 * steering; reversing, the nose's. A corner is b from the rear axle and w from the middle line; beside it stands
 * something at the gap g from the body's side. It comes out
 *     b·sin θ − (R + w)(1 − cos θ),  at most √((R + w)² + b²) − (R + w),
 * beyond where it stood, so it has g' = g + W/2 − w to go: a rack narrower than the body starts farther in.
 * No slip, rectangle body. Derived from plane geometry.
 */

/** What is passed: the gap beside the body's side, and which end goes out (the tail going forward, the nose in reverse). */
export interface Gap {
  readonly gapM: number;
  readonly reversing: boolean;
}

/** The steering that a gap allows. */
interface Allowed {
  /** least radius of the rear-axle centre; `Infinity`: none, the wheel must stay straight */
  readonly radiusM: number;
  readonly steerRad: number;
  /** 0…1 of full lock; 1: full lock will do */
  readonly lockShare: number;
}

/** The tightest steering from straight with which an end stays within a gap beside it: R = (b² − g'²) / 2g' − w. */
export function steeringForGap(vehicle: SwingVehicle, gap: Gap): Allowed {
  const corners = cornersBeside(vehicle, gap).map(({ bM, wM, toGoM }) => ({ bM, wM, outM: toGoM }));
  const radiusM = Math.max(vehicle.lock.rearAxleRadiusM, radiusOfSwingM(corners));
  const steerRad = steerOfRadiusRad(vehicle, radiusM);
  return { radiusM, steerRad, lockShare: Math.min(1, steerRad / lockRad(vehicle)) };
}

/**
 * How far to go on straight before holding a radius, when what stands beside ENDS: a parked car's bumper, a wall's corner.
 * Everything up to the place `endM` is beside the vehicle, everything past it is free; `endM` is measured along the
 * side from the rear axle in the way of travel (going forward with a car alongside whose front is level with the
 * rear axle: 0; a metre behind it: −1). A corner first exceeds the gap at
 *     θ₁ = asin((c + g') / ρ) − atan2(c, b),  c = R + w, ρ = √(c² + b²),
 * and stands there c·sin θ₁ − b·cos θ₁ along the side; from then on it and the edge behind it run away from the end
 * faster than they come out. So it must stand past the end at that moment.
 * @returns metres, 0 where it may be turned at once
 */
export function straightFirstM(vehicle: SwingVehicle, radiusM: number, gap: Gap, endM: number): number {
  let straightM = 0;
  for (const { bM, wM, toGoM } of cornersBeside(vehicle, gap)) {
    const outM = radiusM + wM;
    const farM = Math.hypot(outM, bM);
    if (farM - outM <= toGoM) continue;
    // beside a corner that already stands against it the wheel may not be turned at all
    const theta = toGoM <= 0 ? 0 : Math.asin((outM + toGoM) / farM) - Math.atan2(outM, bM);
    const standsM = outM * Math.sin(theta) - bM * Math.cos(theta);
    straightM = Math.max(straightM, endM - standsM);
  }
  return straightM;
}

/** The corners that go out, b from the rear axle and w from the middle line, and how far each may come. Metres. */
function cornersBeside(
  vehicle: SwingVehicle,
  { gapM, reversing }: Gap,
): readonly { readonly bM: number; readonly wM: number; readonly toGoM: number }[] {
  return swingingCorners(vehicle, { reversing }).map(({ aheadM, halfWidthM }) => ({
    bM: Math.abs(aheadM),
    wM: halfWidthM,
    toGoM: gapM + vehicle.widthM / 2 - halfWidthM,
  }));
}
