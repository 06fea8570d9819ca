import { KG_PER_POUND } from '../../units/exact.ts';
import { sizeIn } from '../../units/in-units.ts';
import { NOISE_STEPS, printCm, printFeetInches, printMetres, printTonnes } from '../../units/print.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { envelopeOf, HEIGHT_ALLOWANCE_M } from '../../vehicle/envelope.ts';
import { departureSlope } from '../../vehicle/ground-angles.ts';
import type { BigFigure } from './document.ts';

/** The figures that signs ask for, rounded against the driver: height, width over mirrors, length, plated weight. */
export function bigFigures(card: VehicleCard): BigFigure[] {
  const { lengthM } = envelopeOf(card);
  const rack = card.rack?.fitted === true;
  return [
    heightFigure(card),
    sizeFigure('Width over mirrors', card.widthMirrorsM),
    sizeFigure(rack ? 'Length with rack' : 'Length', lengthM),
    weightFigure('Plated weight', card.grossKg),
  ];
}

/** All that stands on a visor card. */
export function cardFigures(card: VehicleCard): BigFigure[] {
  const rack = card.rack;
  return [
    heightFigure(card),
    sizeFigure('Width over mirrors', card.widthMirrorsM),
    sizeFigure(rack === undefined ? 'Length' : 'Length without rack', card.lengthM),
    ...(rack === undefined ? [] : [sizeFigure('Length with rack', card.lengthM + rack.lengthM)]),
    weightFigure('Plated weight', card.grossKg),
    weightFigure('Front axle', card.axleKg.front),
    weightFigure('Rear axle', card.axleKg.rear),
  ];
}

/** The widths that a gap is measured against, in a line: `Body 2.30 m (7'7") wide, mirrors folded in 2.36 m (7'9").` */
export function sayWidths({ widthM, widthMirrorsFoldedM }: VehicleCard): string {
  const folded =
    widthMirrorsFoldedM === undefined
      ? ''
      : `, mirrors folded in ${sizeIn('both', widthMirrorsFoldedM, 'up')}`;
  return `Body ${sizeIn('both', widthM, 'up')} wide${folded}.`;
}

/** `1 in 8`, the steepest start of a ramp that the tail clears, a fitted rack counted in; undefined without a clearance. */
export function tailOneIn(card: VehicleCard): string | undefined {
  const slope = departureSlope(card);
  return slope === undefined || !(slope > 0) || !Number.isFinite(slope)
    ? undefined
    : `1 in ${Math.ceil(1 / slope - 1e-9)}`;
}

/** As the check holds it against a limit: no card may say less than the sheet beside it. */
function heightFigure(card: VehicleCard): BigFigure {
  return sizeFigure(
    `Height, with ${printCm(HEIGHT_ALLOWANCE_M, 'up')} for measuring`,
    envelopeOf(card).heightM,
  );
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
