import { sizeIn, trueMinus, type Units } from '../../units/in-units.ts';
import { printKg, printPercent, type Rounding } from '../../units/print.ts';
import { massSum } from '../../units/sum.ts';
import { RACK } from '../../vehicle/place-names.ts';
import type { LoadItem } from '../list/load-list.ts';
import type { AxleLoads } from './axle-loads.ts';
import type { LoadFigures, LoadLimit } from './figures.ts';
import { loadLevel } from './load-level.ts';
import { decidingOf, overSums, type PlateSum } from './sums.ts';

/** Stands wherever a load's figures are shown. */
export const LOAD_CAUTION =
  'Worked out from the figures given, not weighed. Weigh the vehicle on a public weighbridge, axle by axle, as it leaves. The plates and local rules decide.';

/** What is held against, as it is called in a sentence. */
export const LIMIT_NAME: Readonly<Record<LoadLimit, string>> = {
  gross: 'gross',
  front: 'front axle',
  rear: 'rear axle',
  rack: 'rack',
};

/** What is reached or exceeded, in a sentence. */
export const LIMIT_SAID: Readonly<Record<LoadLimit, string>> = {
  gross: 'gross plate',
  front: 'front axle plate',
  rear: 'rear axle plate',
  rack: 'limit of the rack',
};

/** `83 kg`, a true minus sign. */
export function kgText(kg: number, rounding: Rounding = 'nearest'): string {
  return trueMinus(printKg(kg, rounding)).replace(/^−0 /, '0 ');
}

/** `83`: for tables that say kg once. */
export function bareKg(kg: number, rounding: Rounding = 'nearest'): string {
  return bare(kgText(kg, rounding));
}

function bare(text: string): string {
  return text.replace(' kg', '');
}

/** `+83` or `−12`: what something adds or takes off. */
function signedKg(kg: number): string {
  const text = bareKg(kg);
  return kg > 0 && text !== '0' ? `+${text}` : text;
}

/** `2000 − 1917 = 83 kg`: the plate rounded down, the load up, the spare as it follows; what is estimated says so. */
export function sumText({ plateKg, loadKg, estimated }: PlateSum): string {
  const { limit, needed, spare } = massSum({ limit: plateKg, needed: loadKg });
  return `${bare(limit)} − ${bare(needed)} = ${spare}${estimated ? ' (estimate)' : ''}`;
}

/** `rear axle over by 28 kg`, or `83 kg spare, rear axle`. */
export function sayPlate(sum: PlateSum): string {
  const { limit, spareKg, over } = sum;
  if (over) return `${LIMIT_NAME[limit]} over by ${about(sum)}${kgText(-spareKg, 'up')}`;
  return `${about(sum)}${kgText(spareKg, 'down')} spare, ${LIMIT_NAME[limit]}`;
}

/** `about ` before a figure that is estimated. */
export function about({ estimated }: Pick<PlateSum, 'estimated'>): string {
  return estimated ? 'about ' : '';
}

/** Several of them: `gross over by 26 kg, rack over by 7 kg`. */
export function sayPlates(sums: readonly PlateSum[]): string {
  return sums.map(sayPlate).join(', ');
}

/**
 * What decides, in one line for paper and terminal.
 * @param told.doubtful whether anything else is to be checked
 * @param told.marginKg what must be left for the load not to be called tight
 */
export function headlineOf(
  figures: LoadFigures,
  told: { readonly doubtful: boolean; readonly marginKg: number },
): string {
  const estimate = figures.estimated ? 'ESTIMATE, NOT WEIGHED. ' : '';
  const check = told.doubtful ? ' Check the points below.' : '';
  switch (loadLevel(figures, told.marginKg)) {
    case 'over':
      return `${estimate}OVER: ${sayOver(figures)}. Do not leave like this.`;
    case 'tight':
      return `${estimate}TIGHT: ${sayLeft(figures)}, less than the ${printKg(told.marginKg)} to keep.${check}`;
    case 'within':
      return `${estimate}WITHIN THE PLATES: ${sayLeft(figures)}.${check}`;
  }
}

/** Where the axles as shown do not add up to the gross as shown: why not; else nothing. */
export function sayRounded({ grossKg, frontKg, rearKg }: LoadFigures): string {
  const up = (kg: number) => Math.ceil(kg - 1e-6);
  return up(frontKg) + up(rearKg) === up(grossKg)
    ? ''
    : 'Each figure is rounded up by itself, so the two axles come to a kilogram more than the gross.';
}

/** What is over, by how much: `gross by 26 kg, rear axle by 3 kg`. */
export function sayOver(figures: LoadFigures): string {
  return overSums(figures)
    .map((sum) => `${LIMIT_NAME[sum.limit]} by ${about(sum)}${printKg(-sum.spareKg, 'up')}`)
    .join(', ');
}

/** What is left, where nothing is over: `least spare: rear axle, 83 kg`. */
export function sayLeft(figures: LoadFigures): string {
  const sum = decidingOf(figures);
  return `least spare: ${LIMIT_NAME[sum.limit]}, ${about(sum)}${printKg(sum.spareKg, 'down')}`;
}

/** `plated at 3500 kg`; with what it weighs as listed, where a load is given. */
export function sayPlated(plateKg: number, actualKg: number | undefined): string {
  const plated = `plated at ${printKg(plateKg, 'up')}`;
  if (actualKg === undefined || actualKg <= plateKg) return plated;
  return `${plated} and loaded as listed ${printKg(actualKg, 'up')}, over its plate by ${printKg(actualKg - plateKg, 'up')}`;
}

/** Where something stands: `2.75 m behind the front axle`. */
function sayX(xM: number, units: Units): string {
  if (Math.abs(xM) < 0.005) return 'over the front axle';
  const off = sizeIn(units, Math.abs(xM), 'nearest');
  return xM > 0 ? `${off} behind the front axle` : `${off} ahead of the front axle`;
}

/** `Garage, 5.35 m behind the front axle`. */
export function sayWhere({ place, xM }: Pick<LoadItem, 'place' | 'xM'>, units: Units): string {
  const where = place === RACK ? 'the rack' : place;
  return where === undefined ? sayX(xM, units) : `${where}, ${sayX(xM, units)}`;
}

/** `front +15, rear +33`. */
export function sayShare({ frontKg, rearKg }: AxleLoads): string {
  return `front ${signedKg(frontKg)}, rear ${signedKg(rearKg)} kg`;
}

/** Where the mass lies along the vehicle, and how much of it on a fitted rack: a sentence or two. */
export function sayBalance({ centreM, frontShare, rack }: LoadFigures, units: Units): string {
  const balance = `Centre of mass ${sayX(centreM, units)}: ${printPercent(frontShare)} on the front.`;
  if (!rack) return balance;
  const own = rack.limitFrom === 'card' ? '' : ', common practice: its own limit is not on the card';
  return `${balance} Rack ${kgText(rack.onKg, 'up')} of ${kgText(rack.limitKg, 'down')}${own}.`;
}
