import { KG_PER_POUND } from '../../units/exact.ts';
import { NOISE_STEPS, printFeetInches, printMetres, printTonnes } from '../../units/print.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { envelopeOf } from '../../vehicle/envelope.ts';
import { departureSlope } from '../../vehicle/ground-angles.ts';
import type { BigFigure } from './document.ts';

/** The figures that signs ask for, rounded against the driver: height, width over mirrors, length, plated weight. */
export function bigFigures(card: VehicleCard): BigFigure[] {
  const { lengthM } = envelopeOf(card);
  const rack = card.rack?.fitted === true;
  return [
    sizeFigure('Height', card.heightM),
    sizeFigure('Width over mirrors', card.widthMirrorsM),
    sizeFigure(rack ? 'Length with rack' : 'Length', lengthM),
    weightFigure('Plated weight', card.grossKg),
  ];
}

/** All that stands on a visor card. */
export function cardFigures(card: VehicleCard): BigFigure[] {
  const rack = card.rack;
  return [
    sizeFigure('Height', card.heightM),
    sizeFigure('Width over mirrors', card.widthMirrorsM),
    sizeFigure(rack === undefined ? 'Length' : 'Length without rack', card.lengthM),
    ...(rack === undefined ? [] : [sizeFigure('Length with rack', card.lengthM + rack.lengthM)]),
    weightFigure('Plated weight', card.grossKg),
    weightFigure('Front axle', card.axleKg.front),
    weightFigure('Rear axle', card.axleKg.rear),
  ];
}

/** `1 in 8`, the steepest start of a ramp that the tail clears, a fitted rack counted in; undefined without a clearance. */
export function tailOneIn(card: VehicleCard): string | undefined {
  const slope = departureSlope(card);
  return slope === undefined || !(slope > 0) || !Number.isFinite(slope)
    ? undefined
    : `1 in ${Math.ceil(1 / slope - 1e-9)}`;
}

function sizeFigure(what: string, m: number): BigFigure {
  return { what, metric: printMetres(m, 'up'), imperial: typographic(printFeetInches(m, 'up')) };
}

/** Tonnes, as signs have them, and pounds. */
function weightFigure(what: string, kg: number): BigFigure {
  return {
    what,
    metric: printTonnes(kg, 'up'),
    imperial: `${Math.ceil(kg / KG_PER_POUND - NOISE_STEPS)} lb`,
  };
}

/** True primes, as figures are set large. */
function typographic(feetInches: string): string {
  return feetInches.replace("'", '′').replace('"', '″');
}
