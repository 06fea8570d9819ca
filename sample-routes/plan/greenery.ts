import type { Tags, Through } from './words.ts';

/** An uneven oval: its middle, half length and half breadth (metres), turned by radians. */
export interface Oval {
  readonly x: number;
  readonly y: number;
  readonly a: number;
  readonly b: number;
  readonly turn: number;
}

interface OvalPlan extends Oval {
  readonly tags: Tags;
}

/** Where the town's houses and works stand. */
export const TOWN_GROUNDS: readonly OvalPlan[] = [
  { tags: { landuse: 'residential', name: 'Wenlowbridge' }, x: 150, y: 550, a: 1450, b: 1050, turn: 0.4 },
  { tags: { landuse: 'residential', name: 'Wenlowbridge' }, x: -620, y: -950, a: 800, b: 560, turn: 0.2 },
  {
    tags: { landuse: 'industrial', name: 'Saltpan Trading Estate' },
    x: 1440,
    y: -60,
    a: 300,
    b: 260,
    turn: 1.4,
  },
];

const wood = (name: string): Tags => ({ natural: 'wood', leaf_type: 'broadleaved', name });

export const WOODS: readonly OvalPlan[] = [
  { tags: wood('Quillet Hanger'), x: -5850, y: 4640, a: 420, b: 330, turn: 0.3 },
  { tags: wood('Coldharbour Wood'), x: -1560, y: 2650, a: 520, b: 230, turn: 1.5 },
  { tags: wood('Moss Wood'), x: -3900, y: 1650, a: 520, b: 170, turn: 2.6 },
  { tags: wood('Toft Plantation'), x: 2350, y: 2600, a: 420, b: 260, turn: 0.4 },
  { tags: wood('Nether Copse'), x: -1650, y: -1950, a: 330, b: 170, turn: 0.3 },
  { tags: wood('Carr Wood'), x: -5500, y: 1400, a: 380, b: 240, turn: 1.2 },
  { tags: wood('Saltern Belt'), x: 5750, y: -1600, a: 430, b: 120, turn: 1.3 },
  { tags: wood('Gannet Wood'), x: 6600, y: 2950, a: 400, b: 260, turn: 2.5 },
  { tags: wood('Fold Wood'), x: 2900, y: 3350, a: 300, b: 180, turn: 2.3 },
  { tags: wood('Link Spinney'), x: -4700, y: -2350, a: 300, b: 150, turn: 0.4 },
];

export const MEADOWS: readonly OvalPlan[] = [
  { tags: { landuse: 'meadow' }, x: -2100, y: 480, a: 420, b: 120, turn: 2.5 },
  { tags: { landuse: 'meadow', flood_prone: 'yes' }, x: 3900, y: -1500, a: 480, b: 160, turn: 2.5 },
  { tags: { natural: 'wetland', wetland: 'saltmarsh' }, x: 5500, y: -3750, a: 520, b: 200, turn: 2.6 },
  { tags: { leisure: 'park', name: 'Castle Field' }, x: -300, y: 470, a: 110, b: 80, turn: 0.2 },
  { tags: { landuse: 'cemetery' }, x: -620, y: -250, a: 55, b: 40, turn: 0.1 },
  { tags: { leisure: 'golf_course', name: 'Sands Links' }, x: -300, y: -4350, a: 420, b: 240, turn: 0.1 },
  { tags: { natural: 'water', name: 'Barrow Tarn' }, x: -3400, y: 3700, a: 230, b: 120, turn: 0.5 },
  {
    tags: { natural: 'water', water: 'reservoir', name: 'Cawthern Water' },
    x: 4500,
    y: 3600,
    a: 330,
    b: 170,
    turn: 0.7,
  },
  { tags: { natural: 'heath' }, x: -4200, y: 5000, a: 800, b: 380, turn: 0.1 },
];

export const BEACH: { readonly tags: Tags; readonly shore: Through; readonly wideM: number } = {
  tags: { natural: 'beach', surface: 'sand', name: 'Gannet Sands' },
  shore: '-350 -5080, 100 -5140, 520 -5190, 980 -5170, 1400 -5060',
  wideM: 110,
};

/** Rows of trees hard by some lanes: from and to as shares of the length. */
export const TREE_ROWS: readonly { readonly key: string; readonly from: number; readonly to: number }[] = [
  { key: 'u-nether', from: 0.2, to: 0.55 },
  { key: 'u-mill', from: 0.35, to: 0.7 },
  { key: 'u-link', from: 0.3, to: 0.6 },
  { key: 'u-down', from: 0.55, to: 0.8 },
  { key: 'u-pond', from: 0.1, to: 0.3 },
];
