import { fail, ok, type Result } from '../result.ts';
import { doubtfulFeet, sayReadings } from './decimal-feet.ts';
import { KG_PER_POUND } from './exact.ts';
import { readInches } from './read-inches.ts';
import { readLength } from './read-length.ts';
import { quote } from './text.ts';

const POUNDS_PER_STONE = 14;
const KG_PER: Readonly<Record<string, number>> = { kg: 1, t: 1000, lb: KG_PER_POUND, lbs: KG_PER_POUND };
const MAY_BE_THOUSANDS = /^[1-9]\d{0,2}[.,]\d{3}$/;
const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
const MASS = new RegExp(`^(${NUMBER})\\s*(kg|t|lb|lbs|st)?(?:\\s*(${NUMBER})\\s*(?:lb|lbs))?$`, 'i');

/**
 * A length as a person types it: metres, or feet and inches down to sixteenths. One figure: of two, the lower would
 * flatter a vehicle. Feet with decimals that may be inches are asked about, with the code `doubtful-feet`.
 */
export function readEntryLength(text: string): Result<number> {
  const entry = text.trim();
  if (/^0+(?:[.,]0{1,2})?(?:\s*m)?$/.test(entry)) return ok(0);
  const inches = readInches(entry);
  if (inches !== undefined) return ok(inches);
  const doubtful = doubtfulFeet(entry);
  if (doubtful.length > 0)
    return fail(
      'doubtful-feet',
      `${quote(entry, 20)} may be ${sayReadings(doubtful)}: write ${doubtful.map(({ text }) => text).join(' or ')}.`,
    );
  const read = readLength(entry);
  return read.kind === 'value' && !read.notes.includes('several-values-lowest-taken')
    ? ok(read.value)
    : fail('entry', `${quote(entry, 20)} is no length: write 3.05, 3.05 m or 10'3".`);
}

/** What a mass may be, kilograms: settles whether "3.500" is three thousand five hundred or three and a half. */
export interface MassBounds {
  readonly least: number;
  readonly most: number;
}

/**
 * A mass as a person types it: kilograms when no unit is written; tonnes, pounds and stones with theirs.
 * One to three digits, a mark and three digits ("3.500", "12,125") are thousands to some and decimals to others: taken
 * where only one of the two lies within the bounds, asked again otherwise. "0.125" and "1540.125" can only be decimals.
 */
export function readEntryMass(text: string, bounds?: MassBounds): Result<number> {
  const entry = text.trim();
  const match = MASS.exec(entry);
  const [, figure, written = 'kg', pounds] = match ?? [];
  const unit = written.toLowerCase();
  if (figure === undefined || (pounds !== undefined && unit !== 'st'))
    return fail('entry', `${quote(entry, 20)} is no mass: write 3500, 3500 kg, 3.5 t or 12 st 7 lb.`);
  const kgOf = (value: number) =>
    unit === 'st'
      ? (value * POUNDS_PER_STONE + decimal(pounds ?? '0')) * KG_PER_POUND
      : value * (KG_PER[unit] ?? 1);
  const asDecimal = kgOf(decimal(figure));
  if (!MAY_BE_THOUSANDS.test(figure) || (unit === 't' && figure.includes('.'))) return ok(asDecimal);
  const may = [asDecimal, kgOf(decimal(figure) * 1000)].filter(
    (kg) => bounds !== undefined && kg >= bounds.least && kg <= bounds.most,
  );
  const [only] = may;
  if (only !== undefined && may.length === 1) return ok(only);
  return fail(
    'entry',
    `${quote(entry, 20)} may be thousands or decimals: write 3500 or 3.5 t, or a fourth decimal as in 12.1250.`,
  );
}

function decimal(figure: string): number {
  return Number(figure.replace(',', '.'));
}

/** A figure as typed, without the minus before it, hyphen or sign; what it stands for is for each field to say. */
export function splitMinus(text: string): { readonly minus: boolean; readonly figure: string } {
  const typed = text.trim();
  const minus = /^[-−–]/.test(typed);
  return { minus, figure: minus ? typed.slice(1).trimStart() : typed };
}
