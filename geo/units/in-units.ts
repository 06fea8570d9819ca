import {
  printFeetInches,
  printKm,
  printLimitFeet,
  printMetres,
  printMiles,
  printRun,
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

/** A limit, rounded down, and feet of it that go with those of the size it is held against. */
export function limitIn(units: Units, m: number, sizeM: number): string {
  return inUnits(units, trueMinus(printMetres(m, 'down')), trueMinus(printLimitFeet(m, sizeM)));
}

/** A distance along the drive: `2.2 km`, `1.4 mi`, or both. */
export function distanceIn(units: Units, m: number): string {
  return inUnits(units, printKm(m), printMiles(m));
}

/** How long a stretch is: `80 m`, `1.2 km`, `0.1 mi`. */
export function lengthIn(units: Units, m: number): string {
  return inUnits(units, printRun(m), printMiles(m));
}

/** A true minus sign is as wide as a figure. */
export function trueMinus(text: string): string {
  return text.replace(/^-/, '−');
}
