import { METRES_PER_FOOT, METRES_PER_INCH } from './exact.ts';
import { printMetres } from './print.ts';

/** One way to read a figure that can be read in more than one. */
export interface Meant {
  /** to be put in the field */
  readonly text: string;
  /** to be asked: `3.05 m`, `10 ft 11 in (3.33 m)` */
  readonly says: string;
  /** metres or kilograms, as it would be kept */
  readonly value: number;
}

const MARKED = /^(\d{1,3}[.,]\d+)\s*(?:['’‘′´`]|ft\.?|foot|feet)$/i;

/**
 * What feet with decimals may mean, the longest first: "10.11" is ten feet and eleven inches to many who write it, and
 * to others 10.11 feet. Decimals that no inches have ("10.25") can only be a part of a foot.
 * @param figure as written, without a unit
 */
export function readingsInFeet(figure: string): readonly Meant[] {
  const [feet = '', decimals = ''] = figure.split(/[.,]/);
  const decimal = reading(Number(`${feet}.${decimals}`) * METRES_PER_FOOT, `${figure} ft`);
  const inches = decimals.length > 2 ? 0 : Number(decimals);
  if (inches < 1 || inches > 11) return [decimal];
  const m = (Number(feet) * 12 + inches) * METRES_PER_INCH;
  const written = { ...reading(m, `${feet} ft ${inches} in`), text: `${feet}'${inches}"` };
  return written.value > decimal.value ? [written, decimal] : [decimal, written];
}

/**
 * The readings of a length in decimal feet that may be more than it says: one with two decimals that are inches as well.
 * With one decimal ("10.5 ft") inches would make less of it, and what it says errs on the safe side. None for any other text.
 */
export function doubtfulFeet(text: string): readonly Meant[] {
  const figure = MARKED.exec(text.trim())?.[1];
  if (figure === undefined || !/[.,]\d\d$/.test(figure)) return [];
  const readings = readingsInFeet(figure);
  return readings.length > 1 ? readings : [];
}

/** `10 ft 11 in (3.33 m) or 10.11 ft (3.09 m)` */
export function sayReadings(readings: readonly Meant[]): string {
  return readings.map(({ says }) => says).join(' or ');
}

function reading(m: number, as: string): Meant {
  const value = Math.round(m * 10_000) / 10_000;
  return { text: String(value), says: `${as} (${printMetres(value, 'up')})`, value };
}
