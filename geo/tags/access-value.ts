import { remembered } from '../remembered.ts';

/**
 * What an access value means for a motorhome on hire.
 * `permit` stands for every purpose it does not have: permit, delivery, agricultural, forestry.
 */
export type AccessMeaning = 'open' | 'no' | 'private' | 'permit' | 'destination' | 'discouraged' | 'unknown';

const MEANINGS: ReadonlyMap<string, AccessMeaning> = new Map([
  ['yes', 'open'],
  ['designated', 'open'],
  ['official', 'open'],
  ['permissive', 'open'],
  ['no', 'no'],
  ['private', 'private'],
  ['permit', 'permit'],
  ['delivery', 'permit'],
  ['agricultural', 'permit'],
  ['forestry', 'permit'],
  ['destination', 'destination'],
  ['customers', 'destination'],
  ['discouraged', 'discouraged'],
]);

/** The order in which one of several listed values would be the hardest on us. */
const HARDEST = ['no', 'private', 'permit', 'destination', 'discouraged', 'open'] as const;

/** Whether the first meaning asks more of us than the second; what nobody understands asks less than a closure. */
export function isHarder(a: AccessMeaning, b: AccessMeaning): boolean {
  const order: readonly AccessMeaning[] = [
    'no',
    'private',
    'permit',
    'destination',
    'unknown',
    'discouraged',
    'open',
  ];
  return order.indexOf(a) < order.indexOf(b);
}

/** Whether a value, conditions and lanes among it, closes in every part of it: it opens nothing, whatever it means. */
export function onlyCloses(text: string): boolean {
  const values = text.includes('@') ? valuesBefore(text.split('@').slice(0, -1)) : text.split(/[|;]/);
  return values.every((value) => value.trim() === 'no');
}

/** What stands right before each @: its clause's value. A pattern for it would try long texts from every letter on. */
function valuesBefore(parts: readonly string[]): string[] {
  return parts.map((part) =>
    part.slice(Math.max(part.lastIndexOf(';'), part.lastIndexOf('('), part.lastIndexOf(')')) + 1),
  );
}

/**
 * The meaning of an access value. A list such as `agricultural;forestry` lets each of them in, so the mildest
 * counts; one unknown part makes the whole unknown.
 */
export const readAccessValue = remembered((text): AccessMeaning => {
  const meanings = text.split(';').map((part) => MEANINGS.get(part.trim()) ?? 'unknown');
  if (meanings.includes('unknown')) return 'unknown';
  return HARDEST.findLast((meaning) => meanings.includes(meaning)) ?? 'unknown';
});
