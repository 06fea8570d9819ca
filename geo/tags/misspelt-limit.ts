import { slips } from '../units/slips.ts';

/** The keys a mapper can have meant. */
const MEANT = [
  'maxheight',
  'maxwidth',
  'maxlength',
  'maxweight',
  'maxweightrating',
  'maxunladenweight',
  'maxaxleload',
  'maxbogieweight',
] as const;

/** Slips of the hand that still leave the word readable. */
const MOST_SLIPS = 2;

/** Keys of half the roads, which are no slips: not worth counting. */
const EVERYDAY = /^(maxspeed|motor|smoothness$)/;

/**
 * The limit key that a first part of a key was most likely meant to be: `MaxHeight`, `maxhieght`, `max-width`.
 * @returns undefined for the keys themselves and for everything further than two slips (a letter missing, too many,
 * wrong, or two that changed places) from each of them; a least size (`minheight`) is no slip of a greatest one
 */
export function limitMeant(part: string): string | undefined {
  if (part.length > 20 || !mayBeMeant(part) || EVERYDAY.test(part)) return undefined;
  const lower = part.toLowerCase();
  if (lower.startsWith('min')) return undefined;
  let meant: string | undefined;
  let least = MOST_SLIPS + 1;
  for (const key of MEANT) {
    if (Math.abs(key.length - lower.length) > MOST_SLIPS) continue;
    const count = slips(lower, key);
    if (count >= least) continue;
    meant = key;
    least = count;
  }
  return meant === part ? undefined : meant;
}

/**
 * Every word that could be meant begins with max: one of its letters may be wrong or missing, or two have changed places,
 * and one of these is left where it was. Asked of every key there is.
 */
export function mayBeMeant(key: string): boolean {
  const [first, second, third] = [0, 1, 2].map((at) => key.charCodeAt(at) | SMALL);
  return (
    first === LETTER_M ||
    second === LETTER_M ||
    (second === LETTER_A && third === LETTER_X) ||
    (first === LETTER_A && second === LETTER_X)
  );
}

const LETTER_A = 97;
const LETTER_M = 109;
const LETTER_X = 120;
/** makes a capital letter small */
const SMALL = 32;
