/**
 * The modes whose tags speak of a motorhome, from the most specific to the least.
 * A key of an earlier one overrides the later ones.
 */
export const MOTORHOME_MODES = ['motorhome', 'motor_vehicle', 'vehicle', 'access'] as const;
export type MotorhomeMode = (typeof MOTORHOME_MODES)[number];

/** Whether a word names the motorhome or a class of vehicles it belongs to. */
export function isMotorhomeMode(word: string): word is MotorhomeMode {
  return (MOTORHOME_MODES as readonly string[]).includes(word);
}

/** How specific a mode is: 4 for motorhome down to 1 for access, 0 where no mode is named. */
export function modeRank(mode: MotorhomeMode | undefined): number {
  return mode === undefined ? 0 : MOTORHOME_MODES.length - MOTORHOME_MODES.indexOf(mode);
}

/** Goods vehicles: siblings of the motorhome, yet some countries' signs for them bind one over 3.5 t. */
const GOODS_MODES = new Set(['hgv', 'goods', 'N2', 'N3']);

/** Whether a word names goods vehicles. */
export function isGoodsMode(word: string): boolean {
  return GOODS_MODES.has(word) || word.startsWith('hgv_');
}

/** The plate up to which goods-vehicle signs leave a motorhome alone everywhere. Kilograms. */
export const GOODS_SIGNS_FROM_KG = 3500;

/** Siblings and strangers: what is said of them says nothing of a motorhome. */
const OTHER_MODES = new Set([
  'foot',
  'bicycle',
  'horse',
  'carriage',
  'motorcycle',
  'moped',
  'mofa',
  'motorcar',
  'psv',
  'bus',
  'coach',
  'minibus',
  'share_taxi',
  'taxi',
  'tourist_bus',
  'school_bus',
  'trolley_bus',
  'hov',
  'caravan',
  'caravans',
  'trailer',
  'agricultural',
  'forestry',
  'tractor',
  'emergency',
  'hazmat',
  'disabled',
  'bdouble',
  'atv',
  'snowmobile',
  'ski',
  'inline_skates',
  'golf_cart',
  'boat',
  'ship',
  'train',
  'tram',
  'military',
  'carpool',
  'electric_vehicle',
  'M1',
  'M2',
  'M3',
  'N1',
]);

/** Whether a word names a mode of travel that is not the motorhome's. */
export function isOtherMode(word: string): boolean {
  return OTHER_MODES.has(word) || word.startsWith('bicycle_') || word.startsWith('psv_');
}
