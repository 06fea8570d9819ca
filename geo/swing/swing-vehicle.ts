import type { VehicleCard } from '../vehicle/card.ts';
import { type FullLock, fullLockOf } from '../vehicle/lock/full-lock.ts';
import { trackOf } from '../vehicle/lock/lock-sizes.ts';

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
  /** `tryOut`: none of the card's, put on to see what it does */
  readonly rack?: { readonly lengthM: number; readonly widthM: number; readonly tryOut?: true };
  readonly lock: FullLock;
}

/**
 * The vehicle that the kinematics drive.
 * @param rack whether the rack counts; without it as the card says (`fitted`)
 */
export function swingVehicleOf(card: VehicleCard, rack = card.rack?.fitted === true): SwingVehicle {
  return {
    name: card.name,
    wheelbaseM: card.wheelbaseM,
    frontOverhangM: card.frontOverhangM,
    rearOverhangM: card.rearOverhangM,
    widthM: card.widthM,
    trackM: trackOf(card),
    ...(rack && card.rack ? { rack: { lengthM: card.rack.lengthM, widthM: card.rack.widthM } } : {}),
    lock: fullLockOf(card),
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
  return { ...vehicle, rack: { lengthM: TRY_OUT_RACK_M, widthM: card.widthM, tryOut: true } };
}
