import { METRES_PER_INCH } from './exact.ts';

/** Fractions as one character, and what they stand for. */
const FRACTIONS: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};
/** A tape shows halves, quarters, eighths and sixteenths. */
const FRACTION = String.raw`(\d{1,2})\/(2|4|8|16)`;
const INCHES = String.raw`(?:(\d+(?:[.,]\d{1,2})?)(?:[\s-]+${FRACTION})?|${FRACTION})`;
const INCH_MARK = String.raw`(?:"|in\.?|inch|inches)`;
const FEET_MARK = String.raw`(?:'|-|ft\.?|foot|feet)`;
const INCHES_ALONE = new RegExp(`^${INCHES}\\s*${INCH_MARK}$`, 'i');
const FEET_INCHES = new RegExp(`^(\\d{1,3})\\s*${FEET_MARK}\\s*${INCHES}\\s*${INCH_MARK}?$`, 'i');

/**
 * A length in inches as a person writes one: `10'1 1/2"`, `10'1½"`, `10-1`, `121.5"`, `7/8 in`.
 * @returns metres; undefined where it is not written so, or the inches beside feet make a foot or more
 */
export function readInches(text: string): number | undefined {
  const plain = text
    .trim()
    .replace(/[’‘′´`]/g, "'")
    .replace(/[”“″]|''/g, '"')
    .replace(/[¼½¾⅛⅜⅝⅞]/g, (mark) => ` ${FRACTIONS[mark]}`)
    .replace(/(['"-]) /g, '$1')
    .trim();
  const alone = INCHES_ALONE.exec(plain);
  if (alone !== null) return metresOf(inchesOf(alone.slice(1)));
  const [, feet, ...parts] = FEET_INCHES.exec(plain) ?? [];
  if (feet === undefined) return undefined;
  const inches = inchesOf(parts);
  if (inches === undefined || inches >= 12) return undefined;
  return metresOf(Number(feet) * 12 + inches);
}

function metresOf(inches: number | undefined): number | undefined {
  return inches === undefined ? undefined : inches * METRES_PER_INCH;
}

/** @param parts whole, numerator and denominator beside it; numerator and denominator alone */
function inchesOf(parts: readonly (string | undefined)[]): number | undefined {
  const [whole = '0', n, d, nAlone, dAlone] = parts;
  const [over, under] = [n ?? nAlone, d ?? dAlone];
  const count = Number(whole.replace(',', '.'));
  if (over === undefined || under === undefined) return count;
  // "5/4" is no reading of a tape, and "1.5 1/2" no figure
  if (Number(over) >= Number(under) || !Number.isInteger(count)) return undefined;
  return count + Number(over) / Number(under);
}
