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

/** Every word that could be meant begins with an m, or two letters changed places. Asked of every key there is. */
export function mayBeMeant(key: string): boolean {
  return (key.charCodeAt(0) | SMALL) === LETTER_M || (key.charCodeAt(1) | SMALL) === LETTER_M;
}

const LETTER_M = 109;
/** makes a capital letter small */
const SMALL = 32;

/** Optimal string alignment distance (Damerau 1964, no part edited twice). */
function slips(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let count = Math.min(at(last, j) + 1, at(row, j - 1) + 1, at(last, j - 1) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        count = Math.min(count, at(before, j - 2) + 1);
      row.push(count);
    }
    before = last;
    last = row;
  }
  return at(last, b.length);
}

function at(row: readonly number[], j: number): number {
  return row[j]!;
}
