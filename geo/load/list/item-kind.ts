import { LIQUIDS, type Liquid } from '../../vehicle/liquids.ts';

/** What an item is, as far as it matters: people stay aboard, liquids are drained, things are moved or left behind. */
export const ITEM_KINDS = ['driver', 'person', 'thing', ...LIQUIDS] as const;
export type ItemKind = (typeof ITEM_KINDS)[number];

/** Words that tell what a plain line of a load list means; the first that fits decides. */
const WORDS: readonly (readonly [ItemKind, RegExp])[] = [
  // "passenger beside the driver" is no driver
  ['person', /\b(passengers?|child|children|adults?|persons?|people|baby|infant)\b(?!['’]|\s+seat)/i],
  ['driver', /^(the )?driver\b(?!['’])/i],
  ['waste-water', /\b(waste|grey|gray)[ -]?water\b/i],
  ['fresh-water', /^(fresh |drinking |clean )?water\b(?! (bottles?|cans?|hose|pump|filter))/i],
  ['toilet', /^(toilet (tank|cassette)|cassette)\b/i],
  ['adblue', /^ad-?blue\b/i],
  ['fuel', /^(fuel|diesel)\b(?! (can|cans|heater))/i],
];

/** Guessed once an item: every tank and every doubt asks again, and items never change. */
const guessed = new WeakMap<object, ItemKind>();

/**
 * What an item is: its own word for it, or what its name says. The guess changes no figure; it decides which warnings
 * are given and what is proposed where the load is over a plate.
 */
export function kindOf(item: { readonly name: string; readonly kind?: ItemKind | undefined }): ItemKind {
  if (item.kind !== undefined) return item.kind;
  const told = guessed.get(item);
  if (told !== undefined) return told;
  const guess = WORDS.find(([, words]) => words.test(item.name))?.[0] ?? 'thing';
  guessed.set(item, guess);
  return guess;
}

/** Whether an item is somebody: people sit on seats, and stay aboard. */
export function isPerson(item: Parameters<typeof kindOf>[0]): boolean {
  const kind = kindOf(item);
  return kind === 'person' || kind === 'driver';
}

/** The liquid an item is, if it is one. */
export function liquidOf(item: Parameters<typeof kindOf>[0]): Liquid | undefined {
  const kind = kindOf(item);
  return LIQUIDS.find((liquid) => liquid === kind);
}
