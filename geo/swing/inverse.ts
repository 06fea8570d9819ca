import { tailsOf } from './circle.ts';
import { lockRad } from './motion/steer.ts';
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

/** Which end goes out: the tail going forward, the nose in reverse. */
export type End = 'tail' | 'nose';

/** The steering that a gap allows. */
export interface Allowed {
  /** least radius of the rear-axle centre; `Infinity`: none, the wheel must stay straight */
  readonly radiusM: number;
  readonly steerRad: number;
  /** 0…1 of full lock; 1: full lock will do */
  readonly lockShare: number;
  /** what would touch first with more lock */
  readonly part: 'body' | 'rack';
}

interface Corner {
  /** from the rear axle, towards its end */
  readonly reachM: number;
  readonly halfWidthM: number;
  readonly what: 'body' | 'rack';
}

/** The tightest steering from straight with which an end stays within a gap beside it: R = (b² − g'²) / 2g' − w. */
export function steeringForGap(vehicle: SwingVehicle, gapM: number, end: End): Allowed {
  let radiusM = vehicle.lock.rearAxleRadiusM;
  let part: Allowed['part'] = 'body';
  for (const { reachM, halfWidthM, what } of cornersOf(vehicle, end)) {
    const toGoM = toGo(vehicle, gapM, halfWidthM);
    const neededM =
      toGoM <= 0 ? Number.POSITIVE_INFINITY : (reachM ** 2 - toGoM ** 2) / (2 * toGoM) - halfWidthM;
    if (neededM > radiusM) {
      radiusM = neededM;
      part = what;
    }
  }
  const steerRad = Math.atan(vehicle.wheelbaseM / radiusM);
  return { radiusM, steerRad, lockShare: Math.min(1, steerRad / lockRad(vehicle)), part };
}

/** The gap that a steering angle needs beside an end: √((R + w)² + b²) − (R + w), body or rack. Metres; straight needs none. */
export function gapForSteering(vehicle: SwingVehicle, steerRad: number, end: End): number {
  const radiusM = vehicle.wheelbaseM / Math.tan(Math.abs(steerRad));
  if (!Number.isFinite(radiusM)) return 0;
  return Math.max(
    0,
    ...cornersOf(vehicle, end).map(({ reachM, halfWidthM }) => {
      const outM = radiusM + halfWidthM;
      return Math.hypot(outM, reachM) - outM + halfWidthM - vehicle.widthM / 2;
    }),
  );
}

/** A stretch of the vehicle's side, metres from the rear axle towards the end. */
export interface SideStretch {
  readonly fromM: number;
  readonly toM: number;
}

/**
 * Where along the body's side the swing exceeds a gap at a radius: from √(g² + 2g(R + W/2)) behind the rear axle
 * (ahead of it, reversing) to the end of the body. Undefined where no part of the side does. The rack is no part of it.
 */
export function sideBeyondGap(
  vehicle: SwingVehicle,
  radiusM: number,
  gapM: number,
  end: End,
): SideStretch | undefined {
  const [body] = cornersOf(vehicle, end);
  const fromM = Math.sqrt(gapM * gapM + 2 * gapM * (radiusM + vehicle.widthM / 2));
  return body && fromM < body.reachM ? { fromM, toM: body.reachM } : undefined;
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
export function straightFirstM(
  vehicle: SwingVehicle,
  radiusM: number,
  gapM: number,
  endM: number,
  end: End,
): number {
  let straightM = 0;
  for (const { reachM, halfWidthM } of cornersOf(vehicle, end)) {
    const outM = radiusM + halfWidthM;
    const toGoM = toGo(vehicle, gapM, halfWidthM);
    const farM = Math.hypot(outM, reachM);
    if (farM - outM <= toGoM) continue;
    // beside a corner that already stands against it the wheel may not be turned at all
    const theta = toGoM <= 0 ? 0 : Math.asin((outM + toGoM) / farM) - Math.atan2(outM, reachM);
    const standsM = outM * Math.sin(theta) - reachM * Math.cos(theta);
    straightM = Math.max(straightM, endM - standsM);
  }
  return straightM;
}

function toGo(vehicle: SwingVehicle, gapM: number, halfWidthM: number): number {
  return gapM + vehicle.widthM / 2 - halfWidthM;
}

/** The body's corner first. */
function cornersOf(vehicle: SwingVehicle, end: End): readonly Corner[] {
  if (end === 'tail')
    return tailsOf(vehicle).map(({ behindM, halfWidthM, what }) => ({ reachM: behindM, halfWidthM, what }));
  return [
    {
      reachM: vehicle.wheelbaseM + vehicle.frontOverhangM,
      halfWidthM: vehicle.widthM / 2,
      what: 'body',
    },
  ];
}
