import type { Random } from './random.ts';

/** Texts that have broken programs before. */
const TEXTS = [
  '',
  ' ',
  '\u0000',
  '\u001b[31mred\u001b[0m',
  'line\r\nbreak',
  '\u2028',
  '\u202etfel',
  '\u200b',
  '\ud800',
  '\udc00x',
  '\ufeff',
  'é'.repeat(300),
  '🚐'.repeat(130),
  'a'.repeat(5000),
  '{"__proto__":{"x":1}}',
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  '../../../etc/passwd',
  'CON',
  '%s%n%d',
  "'; DROP TABLE roads; --",
  '<script>alert(1)</script>',
  '&lt;&#0;&#x110000;',
  ']]>',
  '<!--',
  '[object Object]',
  'undefined',
  'null',
  'NaN',
  '; '.repeat(60),
  '('.repeat(200),
  '"'.repeat(31),
  '٣٫٥',
  '３．５',
  '3,5',
  '12\'6"',
  '1e309',
];

const NUMBERS = [
  0,
  -0,
  1,
  -1,
  0.1,
  1e-320,
  1e308,
  -1e308,
  2 ** 31,
  -(2 ** 31) - 1,
  2 ** 32,
  2 ** 53,
  2 ** 53 + 2,
  2 ** 63,
  90,
  90.0000001,
  -180,
  180.0000001,
  360,
  520_788,
  8.64e15,
];

export const hostileText = (random: Random): string => random.pick(TEXTS);

export const hostileNumber = (random: Random): number => random.pick(NUMBERS);

/** A number as somebody may write it. */
export function numberText(random: Random): string {
  const number = random.chance(0.3) ? hostileNumber(random) : random.below(10 ** (1 + random.below(5)));
  const decimals = random.chance(0.5) ? `${random.pick(['.', ',', "'"])}${random.below(1000)}` : '';
  return `${random.chance(0.1) ? random.pick(['-', '+', '~', '≈', '<', '>']) : ''}${number}${decimals}`;
}
