/**
 * What of the opening_hours syntax is handed to the library. The library takes nearly any text, and over some of it
 * never comes to an end: `; ; ;` before a span, a year past the end of its calendar. Which signs may follow which, and
 * how many, is held here, so that what it is given costs it a fraction of a second at most.
 */

/** OSM tag values end at 255 characters. */
const LONGEST = 255;
/** Rules between semicolons, commas or bars: each day by itself in two seasons and some holidays. */
const MOST_PARTS = 24;
const MOST_SIGNS = 120;

/** The signs hours are written in, by name. None of the patterns can be matched in two ways. */
const SIGNS = {
  blank: /\s+/uy,
  remark: /"[^"]{1,200}"/uy,
  part: /;|\|\|/uy,
  comma: /,/uy,
  always: /24\/7(?!\d)/uy,
  clock: /\d{1,2}[:.]\d{2}(?!\d)/uy,
  number: /\d{1,4}(?!\d)\.?/uy,
  word: /\p{L}{1,20}(?!\p{L})\.?/uy,
  dash: /[-–]/uy,
  plus: /\+/uy,
  stroke: /\//uy,
  colon: /:/uy,
  open: /\(/uy,
  close: /\)/uy,
  which: /\[-?\d(?:, ?-?\d|-\d){0,4}\]/uy,
} as const;
type Sign = keyof typeof SIGNS;
type Place = Exclude<Sign, 'blank'> | 'end';

const BEGIN: readonly Place[] = ['word', 'number', 'clock', 'always', 'open', 'remark'];

/** What may follow what, blanks apart. */
const NEXT: Readonly<Record<Place, readonly Place[]>> = {
  part: BEGIN,
  comma: BEGIN,
  remark: ['part', 'comma', 'end'],
  always: ['word', 'remark', 'part', 'comma', 'end'],
  clock: ['dash', 'plus', 'stroke', 'close', 'word', 'remark', 'part', 'comma', 'end'],
  number: ['word', 'clock', 'open', 'dash', 'plus', 'stroke', 'colon', 'remark', 'part', 'comma', 'end'],
  word: [...BEGIN, 'which', 'dash', 'plus', 'colon', 'close', 'part', 'comma', 'end'],
  which: ['word', 'number', 'clock', 'open', 'dash', 'plus', 'colon', 'remark', 'part', 'comma', 'end'],
  dash: ['word', 'number', 'clock', 'open'],
  plus: ['word', 'number', 'clock', 'close', 'remark', 'part', 'comma', 'end'],
  stroke: ['number', 'clock'],
  colon: ['word', 'number', 'clock', 'open'],
  open: ['word'],
  close: ['word', 'dash', 'plus', 'remark', 'part', 'comma', 'end'],
  end: [],
};

interface Written {
  readonly sign: Place;
  readonly text: string;
}

/** The signs of a text in order, blanks left out; undefined where it has another, or too many. */
function signsOf(text: string): Written[] | undefined {
  const signs: Written[] = [];
  for (let at = 0; at < text.length; ) {
    const found = signAt(text, at);
    if (found === undefined || signs.length === MOST_SIGNS) return undefined;
    if (found.sign !== 'blank') signs.push({ sign: found.sign, text: found.text });
    at += found.text.length;
  }
  return signs;
}

function signAt(text: string, at: number): { readonly sign: Sign; readonly text: string } | undefined {
  for (const sign of Object.keys(SIGNS) as Sign[]) {
    SIGNS[sign].lastIndex = at;
    const found = SIGNS[sign].exec(text);
    if (found !== null) return { sign, text: found[0] };
  }
  return undefined;
}

function areInOrder(signs: readonly Written[]): boolean {
  let before: Place = 'part';
  let depth = 0;
  for (const { sign } of signs) {
    if (!NEXT[before].includes(sign)) return false;
    if (sign === 'open') depth++;
    if (sign === 'close') depth--;
    if (depth < 0 || depth > 1) return false;
    before = sign;
  }
  return depth === 0 && NEXT[before].includes('end');
}

/**
 * Hours the library can be given: in the shapes it can read at a bounded cost, without the empty parts that stray
 * semicolons make.
 * @returns undefined where they are not of such a shape, too long, or empty
 */
export function plainHours(text: string): string | undefined {
  if (text.length > LONGEST) return undefined;
  const plain = withoutEmptyParts(text);
  const signs = signsOf(plain);
  if (signs === undefined || !areInOrder(signs)) return undefined;
  const parts = signs.filter(({ sign }) => sign === 'part' || sign === 'comma').length + 1;
  return parts > MOST_PARTS ? undefined : plain;
}

/** Stray semicolons say nothing; bars do, and stay for the library to refuse. */
function withoutEmptyParts(text: string): string {
  const spoken = text.match(/"[^"]*"|[^";]+|[";]/gu) ?? [];
  const parts: string[] = [''];
  for (const piece of spoken) {
    if (piece === ';') parts.push('');
    else parts[parts.length - 1] += piece;
  }
  return parts
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .join('; ');
}
