import { printKg } from '../../../geo/units/print.ts';
import type { Settings } from '../../contract/settings.ts';
import { mergeItems } from '../files/merge-items.ts';

type Choice = { [K in keyof Settings]: readonly [K, Settings[K]] }[keyof Settings];

/** What the user calls each choice; which vehicle was looked at last is none. */
const WORD: { readonly [K in keyof Settings]?: string } = {
  units: 'units',
  palette: 'colours',
  margins: 'spare below which a passage is called tight',
  loadMarginKg: 'spare below which a load is called tight',
  country: 'country where the place does not tell',
  tiles: 'background picture',
  servers: 'servers that maps are fetched from',
  prefer: 'roads preferred',
  firm: 'heading and telephone of drive sheets',
  before: 'list before setting off',
};

/** Settings changed here brought together with those changed in another window, choice by choice. */
export function mergeSettings(versions: {
  readonly known: Settings;
  readonly mine: Settings;
  readonly theirs: Settings;
}): { readonly settings: Settings; readonly say: readonly string[] } {
  const { known, mine, theirs } = versions;
  const { items, collisions } = mergeItems(
    { known: choicesOf(known), mine: choicesOf(mine), theirs: choicesOf(theirs) },
    ([name]) => name,
  );
  const say = collisions.flatMap(({ theirs: other }) => {
    const word = other && WORD[other[0]];
    if (!word) return [];
    return [
      `The ${word} had been changed in another window too, to ${sayChoice(other)}. What you have chosen now holds.`,
    ];
  });
  return { settings: { ...mine, ...Object.fromEntries(items) }, say };
}

function choicesOf(settings: Settings): Choice[] {
  return Object.entries(settings) as Choice[];
}

function sayChoice([name, value]: Choice): string {
  if (value === null) return 'none';
  if (name === 'margins') return `${value.heightM} m in height and ${value.physicalWidthM} m in width`;
  if (name === 'loadMarginKg') return printKg(value);
  if (name === 'tiles') return `${value.address} (${value.attribution})`;
  if (name === 'servers') return `${value.line} along a drive and ${value.region} by region`;
  if (name === 'firm')
    return [value.heading, value.telephone].filter((part) => part !== '').join(', ') || 'none';
  if (name === 'before') return value.join('; ') || 'none';
  return String(value);
}
