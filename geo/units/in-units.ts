import { METRES_PER_FOOT } from './exact.ts';
import {
  printCm,
  printFeetInches,
  printInches,
  printKm,
  printMetres,
  printMiles,
  printRun,
  printShortMiles,
  type Rounding,
} from './print.ts';

/** The units a person reads: metric, imperial (miles, feet and inches), or one with the other in brackets. */
export const UNITS = ['metric', 'imperial', 'both'] as const;
export type Units = (typeof UNITS)[number];

/** The same quantity said twice, as the units ask: `3.20 m`, `10'5"`, or `3.20 m (10'5")`. */
export function inUnits(units: Units, metric: string, imperial: string): string {
  if (units === 'both') return `${metric} (${imperial})`;
  return units === 'metric' ? metric : imperial;
}

/** A size: `3.20 m`, `10'5"`, or both. A true minus sign. */
export function sizeIn(units: Units, m: number, rounding: Rounding): string {
  return inUnits(units, trueMinus(printMetres(m, rounding)), trueMinus(printFeetInches(m, rounding)));
}

/** A size where there is room for one unit alone, as on a drawing: feet and inches where those were chosen, else metres. */
export function drawnSizeIn(units: Units, m: number, rounding: Rounding): string {
  return sizeIn(units === 'imperial' ? 'imperial' : 'metric', m, rounding);
}

/** A gap or a swing, where the centimetre counts: `46 cm`, `18 in`, or both. A true minus sign. */
export function shortIn(units: Units, m: number, rounding: Rounding): string {
  return inUnits(units, trueMinus(printCm(m, rounding)), trueMinus(printInches(m, rounding)));
}

/** A way or a radius, where a centimetre means nothing: `3.40 m`, `11.2 ft`, or both. */
export function wayIn(units: Units, m: number): string {
  return inUnits(units, `${m.toFixed(m < 10 ? 2 : 1)} m`, `${(m / METRES_PER_FOOT).toFixed(1)} ft`);
}

/** A distance along the drive: `2.2 km`, `1.4 mi`, or both. */
export function distanceIn(units: Units, m: number): string {
  return inUnits(units, printKm(m), printMiles(m));
}

/** How long a stretch is: `80 m`, `1.2 km`, `90 yd`, `0.1 mi`. */
export function lengthIn(units: Units, m: number): string {
  return inUnits(units, printRun(m), printShortMiles(m));
}

/** A true minus sign is as wide as a figure. */
export function trueMinus(text: string): string {
  return text.replace(/^-/, '−');
}
