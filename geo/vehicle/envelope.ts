import { type Kilograms, kilograms, type Metres, metres } from '../units/brand.ts';
import type { VehicleCard } from './card.ts';

/**
 * Measuring allowance on the card's height: a tape over a roof fitting on a level yard is good to about 5 cm
 * (the trade's 2-inch rule for stated heights; common practice).
 */
export const HEIGHT_ALLOWANCE_M = 0.05;

/** The box the vehicle needs, as every rule compares it. */
export interface Envelope {
  /** with the measuring allowance */
  readonly heightM: Metres;
  readonly bodyWidthM: Metres;
  readonly mirrorsWidthM: Metres;
  /** the least width it can make: folded mirrors, or the body (and rack) where that is wider */
  readonly leastWidthM: Metres;
  readonly foldedKnown: boolean;
  /** with a fitted rack */
  readonly lengthM: Metres;
  readonly grossKg: Kilograms;
  readonly frontAxleKg: Kilograms;
  readonly rearAxleKg: Kilograms;
}

/** The card's figures as the rules compare them: metres and kilograms, a fitted rack counted in. */
export function envelopeOf(card: VehicleCard): Envelope {
  const rack = card.rack?.fitted ? card.rack : undefined;
  const bodyWidthM = Math.max(card.widthM, rack?.widthM ?? 0);
  return {
    heightM: metres(card.heightM + HEIGHT_ALLOWANCE_M),
    bodyWidthM: metres(bodyWidthM),
    mirrorsWidthM: metres(Math.max(card.widthMirrorsM, bodyWidthM)),
    leastWidthM: metres(Math.max(card.widthMirrorsFoldedM ?? card.widthM, bodyWidthM)),
    foldedKnown: card.widthMirrorsFoldedM !== undefined,
    lengthM: metres(card.lengthM + (rack?.lengthM ?? 0)),
    grossKg: kilograms(card.grossKg),
    frontAxleKg: kilograms(card.axleKg.front),
    rearAxleKg: kilograms(card.axleKg.rear),
  };
}
