import type { Tags } from '../roads/roads.ts';
import { beforeFirst } from '../units/text.ts';
import { textOf } from './text-of.ts';

/**
 * How ground carries a vehicle of some 3.5 t on front drive, the worst first; `unknown` is for the caller to say.
 * `loose` slows; `soft` fails after rain; `verySoft` fails; `veryRough` grounds a low floor.
 */
export type Firmness = 'impassable' | 'verySoft' | 'veryRough' | 'soft' | 'loose' | 'unknown';

const ORDER: readonly Firmness[] = ['impassable', 'verySoft', 'veryRough', 'soft', 'loose'];

/** Values of surface that are worth a word. All others (asphalt, sett, compacted…) are firm. */
const SURFACES: Readonly<Record<string, Firmness>> = {
  mud: 'verySoft',
  sand: 'verySoft',
  snow: 'verySoft',
  ice: 'verySoft',
  grass: 'soft',
  dirt: 'soft',
  earth: 'soft',
  ground: 'soft',
  soil: 'soft',
  clay: 'soft',
  woodchips: 'soft',
  rock: 'veryRough',
  stone: 'loose',
  pebblestone: 'loose',
  gravel: 'loose',
  shells: 'loose',
  unpaved: 'loose',
  unhewn_cobblestone: 'loose',
};

const TRACKTYPES: Readonly<Record<string, Firmness>> = {
  grade3: 'loose',
  grade4: 'soft',
  grade5: 'verySoft',
};

const SMOOTHNESS: Readonly<Record<string, Firmness>> = {
  bad: 'loose',
  very_bad: 'veryRough',
  horrible: 'veryRough',
  very_horrible: 'veryRough',
  impassable: 'impassable',
};

const PAVED = /^(paved|asphalt|concrete|chipseal|paving_stones|sett|cobblestone|metal|wood|bricks?|tarmac)/;

/** Whether the surface is mapped as one that carries any vehicle when wet. */
export function isPaved(tags: Tags): boolean {
  return PAVED.test(textOf(tags, 'surface'));
}

/** Whether the map tells anything about the ground of a way. */
export function saysGround(tags: Tags): boolean {
  return ['surface', 'tracktype', 'smoothness'].some((key) => tags[key] !== undefined);
}

/**
 * The worst that surface, tracktype and smoothness say of a way, with the tags that say it; undefined for firm ground
 * and where nothing is said. A paved surface overrides the track's grade.
 */
export function firmnessOf(tags: Tags): { readonly firmness: Firmness; readonly tags: Tags } | undefined {
  const said: { firmness: Firmness; key: string }[] = [];
  const add = (key: string, table: Readonly<Record<string, Firmness>>) => {
    for (const part of textOf(tags, key).split(';')) {
      const value = beforeFirst(part.trim(), ':');
      const firmness = Object.hasOwn(table, value) ? table[value] : undefined;
      if (firmness !== undefined) said.push({ firmness, key });
    }
  };
  add('surface', SURFACES);
  if (!isPaved(tags)) add('tracktype', TRACKTYPES);
  add('smoothness', SMOOTHNESS);
  const worst = ORDER.find((firmness) => said.some((one) => one.firmness === firmness));
  if (worst === undefined) return undefined;
  const keys = said.filter((one) => one.firmness === worst).map(({ key }) => key);
  return { firmness: worst, tags: Object.fromEntries(keys.map((key) => [key, textOf(tags, key)])) };
}
