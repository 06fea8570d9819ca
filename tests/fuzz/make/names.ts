import { hostileText } from './hostile.ts';
import type { Random } from './random.ts';

/** Texts that are something else in a page, a table, a calendar, a drive for a device or a terminal. */
const WORDS_ELSEWHERE = [
  '"><script>alert(1)</script>',
  "' onmouseover='alert(1)",
  '" onload="alert(1)" x="',
  '</style><script>alert(1)</script>',
  '</title><img src=x onerror=alert(1)>',
  '</svg><a href="javascript:alert(1)">x</a>',
  '<!--',
  '-->',
  ']]>',
  '<![CDATA[',
  '&copy;&#60;',
  '&',
  "=cmd|' /C calc'!A0",
  '@SUM(1+1)',
  '+1+1',
  '-2+3',
  '\t=1+1',
  '\u200b=1+1',
  '\uFF1D1+1',
  '"=1+1"',
  'a,b;c\\n\\',
  '\r\nEND:VEVENT\r\nBEGIN:VEVENT',
  '\nURL:https://x.invalid',
  '\r',
  '\u0085next',
  '\u2028\u2029',
  '\u001b]0;title\u0007\u001b[2J',
  '\u009b31m',
  '\b\b\b\b',
  '\u202e gnp.exe',
  '\u2066\u2069\u200f',
  '\ud800\u0041',
  '\ufffe\uffff',
  '\u{e0041}\u{e007f}',
  'e\u0301'.repeat(200),
  '👨‍👩‍👧'.repeat(40),
  'Ω≈ç√∫˜µ',
  'مرحبا',
  'javascript:alert(1)',
  'geo:0,0?q=x',
  '/../../x',
];
const LARGE = 200_000;

/** What somebody may have called a road, a drive, a vehicle, a stop or a firm; now and then as long as a book. @param most characters */
export function hostileName(random: Random, most = Number.POSITIVE_INFINITY): string {
  return [...unbounded(random).slice(0, 2 * most)].slice(0, most).join('');
}

function unbounded(random: Random): string {
  if (random.chance(0.01)) return random.pick(['a', '<', '\u202e', 'é ', '"', '\ud800']).repeat(LARGE);
  const one = () => (random.chance(0.7) ? random.pick(WORDS_ELSEWHERE) : hostileText(random));
  return random.chance(0.3) ? `${one()}${one()}` : one();
}
