import { toRad } from '../../earth/angles.ts';
import { type LockSizes, trackOf } from './lock-sizes.ts';
import { measuredLock } from './measured-lock.ts';

/** Where a least turning radius comes from. */
export const LOCK_SOURCES = [
  'measured',
  'rear-axle radius',
  'kerb circle',
  'wall circle',
  'estimate',
] as const;
export type LockSource = (typeof LOCK_SOURCES)[number];

/** How tightly the vehicle turns with the wheels hard over. Radii of the rear-axle centre, metres. */
export interface FullLock {
  readonly rearAxleRadiusM: number;
  /** where a measurement or an estimate may lie; equal to the radius when it was given */
  readonly lowM: number;
  readonly highM: number;
  readonly from: LockSource;
}

/** Steering lock of common van chassis, and how far it may be off. Degrees; from three published kerb circles of one chassis, from memory. */
const USUAL_LOCK_DEG = 37;
const USUAL_LOCK_OFF_DEG = 3;
/** Front-drive van cabs under a coach-built body are about this wide; the wall circle is the cab's corner. Metres; from memory. */
const CAB_WIDTH_M = 2.05;

/**
 * Least radius of the rear-axle centre. As measured in the yard, else the card's own figure, else from its turning circle
 * (kerb: R = √((D/2)² − L²) − t/2 with the outer front wheel on the circle; wall: the front corner on it),
 * else R = L / tan 37° ± 3°.
 */
export function fullLockOf(sizes: LockSizes): FullLock {
  const measured = measuredLock(sizes);
  if (measured) {
    const { radiusM, lowM, highM } = measured;
    return { rearAxleRadiusM: radiusM, lowM, highM, from: 'measured' };
  }
  const [first] = writtenRadii(sizes);
  if (first)
    return { rearAxleRadiusM: first.radiusM, lowM: first.radiusM, highM: first.radiusM, from: first.from };
  const radiusAt = (deg: number): number => sizes.wheelbaseM / Math.tan(toRad(deg));
  return {
    rearAxleRadiusM: radiusAt(USUAL_LOCK_DEG),
    lowM: radiusAt(USUAL_LOCK_DEG + USUAL_LOCK_OFF_DEG),
    highM: radiusAt(USUAL_LOCK_DEG - USUAL_LOCK_OFF_DEG),
    from: 'estimate',
  };
}

/** A figure of the card for its turning, by whom or what it was found out, as a radius of the rear axle. Metres. */
export interface WrittenRadius {
  readonly from: Exclude<LockSource, 'measured' | 'estimate'>;
  readonly radiusM: number;
}

/** What a brochure or a handbook says of the turning, the surest first. */
export function writtenRadii(sizes: LockSizes): WrittenRadius[] {
  const { wheelbaseM, frontOverhangM, widthM, rearAxleRadiusMinM, turningCircleM, turningCircleWallM } =
    sizes;
  const found: WrittenRadius[] = [];
  if (rearAxleRadiusMinM !== undefined) found.push({ from: 'rear-axle radius', radiusM: rearAxleRadiusMinM });
  if (turningCircleM !== undefined)
    found.push({
      from: 'kerb circle',
      radiusM: rearRadiusInCircle(turningCircleM, wheelbaseM, trackOf(sizes)),
    });
  if (turningCircleWallM !== undefined)
    found.push({
      from: 'wall circle',
      radiusM: rearRadiusInCircle(
        turningCircleWallM,
        wheelbaseM + frontOverhangM,
        Math.min(widthM, CAB_WIDTH_M),
      ),
    });
  return found.filter(({ radiusM }) => radiusM > 0);
}

/** A circle too small for the vehicle gives 0. */
function rearRadiusInCircle(diameterM: number, aheadM: number, acrossM: number): number {
  const squared = (diameterM / 2) ** 2 - aheadM ** 2;
  return squared <= 0 ? 0 : Math.max(0, Math.sqrt(squared) - acrossM / 2);
}
