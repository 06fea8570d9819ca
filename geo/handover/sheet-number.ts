/** Letters and figures that nobody takes for one another, read aloud or written by hand: no 0 O 1 I L 2 Z 5 S 8 B U V. */
const SIGNS = '34679ACDEFGHJKMNPQRTWXY';
const SIGNS_IN_NUMBER = 8;
const SIGNS_IN_GROUP = 4;

/**
 * The number of a sheet, `K7QM-4XPD`: eight signs of a record's SHA-256 in two groups, some 78 billion numbers.
 * @param sha256 64 hex digits
 */
export function sheetNumberOf(sha256: string): string {
  if (!/^[0-9a-f]{64}$/iu.test(sha256)) throw new Error('a SHA-256 has 64 hex digits');
  let rest = BigInt(`0x${sha256}`);
  let signs = '';
  while (signs.length < SIGNS_IN_NUMBER) {
    signs += SIGNS.charAt(Number(rest % BigInt(SIGNS.length)));
    rest /= BigInt(SIGNS.length);
  }
  return `${signs.slice(0, SIGNS_IN_GROUP)}-${signs.slice(SIGNS_IN_GROUP)}`;
}
