import { toRad } from '../earth/angles.ts';
import type { VehicleCard } from '../vehicle/card.ts';

/** Where a least turning radius comes from. */
export type LockSource = 'rear-axle radius' | 'kerb circle' | 'wall circle' | 'estimate';

/** How tightly the vehicle turns with the wheels hard over. Radii of the rear-axle centre, metres. */
export interface FullLock {
  readonly rearAxleRadiusM: number;
  /** where an estimate may lie; equal to the radius when it was given */
  readonly lowM: number;
  readonly highM: number;
  readonly from: LockSource;
}

/**
 * A rigid two-axle vehicle in plan. Frame: origin at the rear-axle centre, x forward, y left, metres.
 * The body is a rectangle without mirrors; a fitted rack is a second rectangle behind it.
 */
export interface SwingVehicle {
  readonly name: string;
  readonly wheelbaseM: number;
  readonly frontOverhangM: number;
  /** body, without a rack */
  readonly rearOverhangM: number;
  readonly widthM: number;
  readonly trackM: number;
  readonly rack?: { readonly lengthM: number; readonly widthM: number };
  readonly lock: FullLock;
}

/** Steering lock of common van chassis, and how far it may be off. Degrees; from three published kerb circles of one chassis, from memory. */
const USUAL_LOCK_DEG = 37;
const USUAL_LOCK_OFF_DEG = 3;
/** Wheels stand about this far inside the body's sides where the track is not given. Metres; common practice, no source. */
const TRACK_INSIDE_M = 0.5;
/** Front-drive van cabs under a coach-built body are about this wide; the wall circle is the cab's corner. Metres; from memory. */
const CAB_WIDTH_M = 2.05;

/**
 * The vehicle that the kinematics drive.
 * @param rack whether the rack counts; without it as the card says (`fitted`)
 */
export function swingVehicleOf(card: VehicleCard, rack = card.rack?.fitted === true): SwingVehicle {
  const trackM = card.trackM ?? Math.max(card.widthM - TRACK_INSIDE_M, 0.5 * card.widthM);
  return {
    name: card.name,
    wheelbaseM: card.wheelbaseM,
    frontOverhangM: card.frontOverhangM,
    rearOverhangM: card.rearOverhangM,
    widthM: card.widthM,
    trackM,
    ...(rack && card.rack ? { rack: { lengthM: card.rack.lengthM, widthM: card.rack.widthM } } : {}),
    lock: fullLockOf(card, trackM),
  };
}

/** A rack to try out on a card that has none: as deep as a common one, as wide as the body. Metres; judgement. */
export const TRY_OUT_RACK_M = 0.7;

/** The vehicle with or without a rack, the card's own or one to try out. @param wanted undefined: as the card says */
export function tryingRack(
  card: VehicleCard,
  { wanted }: { readonly wanted: boolean | undefined },
): SwingVehicle {
  const vehicle = swingVehicleOf(card, wanted ?? card.rack?.fitted === true);
  if (wanted !== true || card.rack) return vehicle;
  return { ...vehicle, rack: { lengthM: TRY_OUT_RACK_M, widthM: card.widthM } };
}

/**
 * Least radius of the rear-axle centre. From the card's own figure, else from its turning circle
 * (kerb: R = √((D/2)² − L²) − t/2 with the outer front wheel on the circle; wall: the front corner on it),
 * else R = L / tan 37° ± 3°.
 */
function fullLockOf(card: VehicleCard, trackM: number): FullLock {
  if (card.rearAxleRadiusMinM !== undefined) return given(card.rearAxleRadiusMinM, 'rear-axle radius');
  if (card.turningCircleM !== undefined) {
    const radiusM = rearRadiusInCircle(card.turningCircleM, card.wheelbaseM, trackM);
    if (radiusM > 0) return given(radiusM, 'kerb circle');
  }
  if (card.turningCircleWallM !== undefined) {
    const noseM = card.wheelbaseM + card.frontOverhangM;
    const radiusM = rearRadiusInCircle(card.turningCircleWallM, noseM, Math.min(card.widthM, CAB_WIDTH_M));
    if (radiusM > 0) return given(radiusM, 'wall circle');
  }
  const radiusAt = (deg: number): number => card.wheelbaseM / Math.tan(toRad(deg));
  return {
    rearAxleRadiusM: radiusAt(USUAL_LOCK_DEG),
    lowM: radiusAt(USUAL_LOCK_DEG + USUAL_LOCK_OFF_DEG),
    highM: radiusAt(USUAL_LOCK_DEG - USUAL_LOCK_OFF_DEG),
    from: 'estimate',
  };
}

/** A circle too small for the vehicle gives 0. */
function rearRadiusInCircle(diameterM: number, aheadM: number, acrossM: number): number {
  const squared = (diameterM / 2) ** 2 - aheadM ** 2;
  return squared <= 0 ? 0 : Math.max(0, Math.sqrt(squared) - acrossM / 2);
}

function given(radiusM: number, from: LockSource): FullLock {
  return { rearAxleRadiusM: radiusM, lowM: radiusM, highM: radiusM, from };
}
