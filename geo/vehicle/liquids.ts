/** What a tank may hold. */
export const LIQUIDS = ['fresh-water', 'waste-water', 'toilet', 'fuel', 'adblue', 'lpg'] as const;
export type Liquid = (typeof LIQUIDS)[number];

export interface LiquidFacts {
  readonly name: string;
  readonly kgPerL: number;
  readonly source: string;
}

export const LIQUID_FACTS: Readonly<Record<Liquid, LiquidFacts>> = {
  'fresh-water': { name: 'fresh water', kgPerL: 1, source: 'water, 1.00 kg a litre' },
  'waste-water': { name: 'waste water', kgPerL: 1, source: 'taken as water, 1.00 kg a litre' },
  toilet: { name: 'toilet tank', kgPerL: 1, source: 'taken as water, 1.00 kg a litre' },
  fuel: { name: 'diesel', kgPerL: 0.83, source: 'from memory: 0.83 kg a litre, 0.82 to 0.845 by season' },
  adblue: { name: 'AdBlue', kgPerL: 1.09, source: 'from memory: 1.09 kg a litre' },
  lpg: {
    name: 'gas (LPG)',
    kgPerL: 0.51,
    source: 'a tunnel operator equates 47 kg with 93 l, 0.505 kg a litre',
  },
};
