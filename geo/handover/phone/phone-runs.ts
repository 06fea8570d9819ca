import type { Strip } from '../../drive/strip/strip.ts';
import { lengthIn } from '../../units/in-units.ts';
import { clip, listed } from '../../units/text.ts';

/** Roads that are named of one run; a short bit of road is not worth its name. */
const MOST_ROADS = 5;
const MOST_TOWNS = 4;
const LEAST_SHARE = 0.04;

/** What lies between two places that are told: `3.2 km (2.0 mi): Mill Lane, A47; through Oxholt`. */
export function sayRun({ pieces, towns }: Strip, fromM: number, toM: number): string {
  const roads: { readonly name: string; readonly lengthM: number }[] = [];
  for (const { name, ref, fromM: begins, toM: ends } of pieces) {
    const lengthM = Math.min(ends, toM) - Math.max(begins, fromM);
    const called = name ?? ref;
    if (called === undefined || lengthM <= 0) continue;
    const last = roads.at(-1);
    if (last?.name === called) roads[roads.length - 1] = { name: called, lengthM: last.lengthM + lengthM };
    else roads.push({ name: called, lengthM });
  }
  const told = roads.filter(({ lengthM }) => lengthM > LEAST_SHARE * (toM - fromM));
  const names = told.slice(0, MOST_ROADS).map(({ name }) => clip(name, 40));
  const through = towns
    .filter(({ atM, size }) => size > 1 && atM > fromM && atM < toM)
    .slice(0, MOST_TOWNS)
    .map(({ name }) => clip(name, 40));
  const more = told.length > MOST_ROADS ? ' and more' : '';
  return [
    `${lengthIn('both', toM - fromM)}${names.length === 0 ? '' : `: ${names.join(', ')}${more}`}`,
    ...(through.length === 0 ? [] : [`through ${listed(through)}`]),
  ].join('; ');
}
