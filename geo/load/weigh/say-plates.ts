import { printKg, type Rounding } from '../../units/print.ts';
import type { LoadItem } from '../list/load-list.ts';
import type { LoadLimit, LoadResult } from '../result.ts';
import { LIMIT_NAME } from '../say-load.ts';

const NOISE_KG = 1e-6;

/** What is reached or exceeded, in a sentence. */
export const LIMIT_SAID: Readonly<Record<LoadLimit, string>> = {
  gross: 'gross plate',
  front: 'front axle plate',
  rear: 'rear axle plate',
  rack: 'limit of the rack',
};

/** plate − load = spare, in kilograms. */
export interface PlateSum {
  readonly limit: LoadLimit;
  readonly plateKg: number;
  readonly loadKg: number;
  readonly spareKg: number;
  readonly over: boolean;
}

/** Both axles, the whole, and the rack where one is fitted. */
export function sumsOf({ plates, spare, frontKg, rearKg, grossKg, rack }: LoadResult): PlateSum[] {
  const sum = (limit: LoadLimit, plateKg: number, loadKg: number, spareKg: number): PlateSum => ({
    limit,
    plateKg,
    loadKg,
    spareKg,
    over: spareKg < -NOISE_KG,
  });
  return [
    sum('front', plates.frontKg, frontKg, spare.frontKg),
    sum('rear', plates.rearKg, rearKg, spare.rearKg),
    sum('gross', plates.grossKg, grossKg, spare.grossKg),
    ...(rack ? [sum('rack', rack.limitKg, rack.onKg, rack.spareKg)] : []),
  ];
}

/** What decides: the worst of what is over, else the plate with the least spare. */
export function decidingOf(result: LoadResult): PlateSum {
  const sums = sumsOf(result);
  const over = sums.filter(({ limit }) => result.over.includes(limit)).sort((a, b) => a.spareKg - b.spareKg);
  const first = over[0] ?? sums.find(({ limit }) => limit === result.bindsFirst) ?? sums[0];
  return first as PlateSum;
}

/** `83 kg`, a true minus sign. */
export function kgText(kg: number, rounding: Rounding = 'nearest'): string {
  return printKg(kg, rounding).replace('-', '−').replace(/^−0 /, '0 ');
}

/** `83`: for tables that say kg once. */
export function bareKg(kg: number, rounding: Rounding = 'nearest'): string {
  return kgText(kg, rounding).replace(' kg', '');
}

/** `+83` or `−12`: what something adds or takes off. */
export function signedKg(kg: number): string {
  const text = bareKg(kg);
  return kg > 0 && text !== '0' ? `+${text}` : text;
}

/** `2000 − 1917 = 83 kg`: the plate rounded down, the load up, the spare down. */
export function sumText({ plateKg, loadKg, spareKg }: PlateSum): string {
  return `${bareKg(plateKg, 'down')} − ${bareKg(loadKg, 'up')} = ${kgText(spareKg, 'down')}`;
}

/** `rear axle over by 28 kg`, or `83 kg spare, rear axle`. */
export function sayPlate({ limit, spareKg, over }: PlateSum): string {
  if (over) return `${LIMIT_NAME[limit]} over by ${kgText(-spareKg, 'up')}`;
  return `${kgText(spareKg, 'down')} spare, ${LIMIT_NAME[limit]}`;
}

/** Where something stands: `2.75 m behind the front axle`. */
function sayX(xM: number): string {
  const off = Math.abs(xM).toFixed(2);
  if (off === '0.00') return 'over the front axle';
  return xM > 0 ? `${off} m behind the front axle` : `${off} m ahead of the front axle`;
}

/** `Garage, 5.35 m behind the front axle`. */
export function sayWhere({ place, xM }: LoadItem): string {
  const where = place === 'rack' ? 'the rack' : place;
  return where === undefined ? sayX(xM) : `${where}, ${sayX(xM)}`;
}

/** `front +15, rear +33`. */
export function sayShare({ frontKg, rearKg }: { readonly frontKg: number; readonly rearKg: number }): string {
  return `front ${signedKg(frontKg)}, rear ${signedKg(rearKg)} kg`;
}
