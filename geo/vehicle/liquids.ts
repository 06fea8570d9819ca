/** What a tank may hold. */
export const LIQUIDS = ['fresh-water', 'waste-water', 'toilet', 'fuel', 'adblue', 'lpg'] as const;
export type Liquid = (typeof LIQUIDS)[number];

interface LiquidFacts {
  readonly name: string;
  readonly kgPerL: number;
  readonly source: string;
}

/** The densities of diesel and AdBlue are from memory. */
export const LIQUID_FACTS: Readonly<Record<Liquid, LiquidFacts>> = {
  'fresh-water': { name: 'fresh water', kgPerL: 1, source: 'water, 1.00 kg a litre' },
  'waste-water': { name: 'waste water', kgPerL: 1, source: 'taken as water, 1.00 kg a litre' },
  toilet: { name: 'toilet tank', kgPerL: 1, source: 'taken as water, 1.00 kg a litre' },
  fuel: { name: 'diesel', kgPerL: 0.83, source: 'usually 0.83 kg a litre, 0.82 to 0.845 by season' },
  adblue: { name: 'AdBlue', kgPerL: 1.09, source: 'usually 1.09 kg a litre' },
  lpg: {
    name: 'gas (LPG)',
    kgPerL: 0.51,
    source: 'a tunnel operator equates 47 kg with 93 l, 0.505 kg a litre',
  },
};

/** Whether a tank of it is emptied on the way; the others are filled up. */
export function isWaste(liquid: Liquid): boolean {
  return liquid === 'waste-water' || liquid === 'toilet';
}

/**
 * What of a tank the empty weight, ready to drive, holds by definition: fuel to 90 % (Reg. 1230/2012 art. 2(4)), AdBlue
 * full as other liquids are. Where the card says that it holds fresh water too, 90 % by the older convention: taking
 * less off than may be in it keeps the answer on the safe side.
 */
export const EMPTY_WEIGHT_SHARE: Readonly<Partial<Record<Liquid, number>>> = {
  fuel: 0.9,
  adblue: 1,
  'fresh-water': 0.9,
};

/** What of a tank the empty weight holds whatever the card says, in words. */
export function inEmptyWeight(liquid: Liquid): string | undefined {
  if (liquid === 'fresh-water') return undefined;
  const share = EMPTY_WEIGHT_SHARE[liquid];
  if (share === undefined) return undefined;
  return share < 1 ? `${share * 100} % are in the empty weight` : 'in the empty weight';
}
