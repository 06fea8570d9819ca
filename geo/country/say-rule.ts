import { printMetres } from '../units/print.ts';
import type { CountryRule, Limit, OpenRoadLimits } from './rule.ts';
import { mph } from './rule.ts';

const WIDTH_SIGN = {
  body: 'A width sign is held against the body; the mirrors must still pass.',
  'with mirrors': 'A width sign counts the mirrors as driven.',
};
const MASS_SIGN = {
  plated: 'The plain mass sign is about the plated mass.',
  actual: 'The plain mass sign is about the mass on the day; the plate is tested all the same.',
};
const GOODS_SIGNS = {
  bind: 'Signs for goods vehicles bind a motorhome over 3.5 t.',
  'do not bind': 'Signs for goods vehicles leave a motorhome over 3.5 t alone.',
  'not known': 'Whether signs for goods vehicles bind a motorhome over 3.5 t is not known.',
};

export function sayWidthSign({ widthSign }: CountryRule): string {
  return WIDTH_SIGN[widthSign.value];
}

export function sayMassSign({ massSign }: CountryRule): string {
  return MASS_SIGN[massSign.value];
}

export function sayGoodsSigns({ goodsSigns }: CountryRule): string {
  return GOODS_SIGNS[goodsSigns.value];
}

export function sayLegalHeight({ legalHeightM: { value } }: CountryRule): string {
  return value === undefined
    ? 'The law sets no height for vehicles.'
    : `The law lets vehicles be ${printMetres(value)} high.`;
}

export function sayKerbs({ kerbRadiusM: { value } }: CountryRule): string {
  return `The kerb at a corner is taken to have a radius of ${value.urban} m in towns, ${value.rural} m outside.`;
}

const ROADS: readonly (readonly [keyof OpenRoadLimits, string])[] = [
  ['rural', 'outside towns'],
  ['dual', 'dual carriageways'],
  ['expressway', 'roads for motor traffic only'],
  ['dualExpressway', 'the same with two carriageways'],
  ['motorway', 'motorways'],
];

/** A speed as the country's signs have it: `60 mph`, `100 km/h`. */
export function saySpeed({ code }: Pick<CountryRule, 'code'>, kmh: number): string {
  return code === 'GB' || code === 'US' ? `${Math.round(kmh / mph(1))} mph` : `${Math.round(kmh)} km/h`;
}

/** General limits in one line; a kind of road that has the limit of the one before it is left out. */
export function sayOpenRoads(rule: CountryRule, limits: OpenRoadLimits): string {
  const print = (limit: Limit) => (limit === 'none' ? 'no limit' : saySpeed(rule, limit));
  const told = ROADS.filter(([road], i) => i === 0 || limits[road] !== limits[ROADS[i - 1]![0]]);
  return `${told.map(([road, words]) => `${words} ${print(limits[road])}`).join(', ')}.`;
}
