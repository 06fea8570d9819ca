import { fail, ok, type Result } from '../result.ts';
import { readLength } from './read-length.ts';

const KG_PER_POUND = 0.45359237;
const POUNDS_PER_STONE = 14;
const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
const MASS = new RegExp(`^(${NUMBER})\\s*(kg|t|lb|lbs|st)?(?:\\s*(${NUMBER})\\s*(?:lb|lbs))?$`, 'i');

/** A length as a person types it: metres, or feet and inches. One figure: of two, the lower would flatter a vehicle. */
export function readEntryLength(text: string): Result<number> {
  const entry = text.trim();
  if (/^0+(?:[.,]0{1,2})?(?:\s*m)?$/.test(entry)) return ok(0);
  const read = readLength(entry);
  return read.kind === 'value' && !read.notes.includes('several-values-lowest-taken')
    ? ok(read.value)
    : fail('entry', `"${entry.slice(0, 20)}" is no length: write 3.05, 3.05 m or 10'3".`);
}

/** A mass as a person types it: kilograms when no unit is written; tonnes, pounds and stones with theirs. */
export function readEntryMass(text: string): Result<number> {
  const entry = text.trim();
  const match = MASS.exec(entry);
  const [, figure, unit = 'kg', pounds] = match ?? [];
  if (figure === undefined || (pounds !== undefined && unit.toLowerCase() !== 'st'))
    return fail('entry', `"${entry.slice(0, 20)}" is no mass: write 3500, 3500 kg, 3.5 t or 12 st 7 lb.`);
  if (/,\d{3}$/.test(figure) || (unit.toLowerCase() !== 't' && /\.\d{3}$/.test(figure)))
    return fail('entry', `"${entry.slice(0, 20)}" may be thousands or decimals: write 3500 or 3.5 t.`);
  const value = decimal(figure);
  switch (unit.toLowerCase()) {
    case 't':
      return ok(value * 1000);
    case 'lb':
    case 'lbs':
      return ok(value * KG_PER_POUND);
    case 'st':
      return ok((value * POUNDS_PER_STONE + decimal(pounds ?? '0')) * KG_PER_POUND);
    default:
      return ok(value);
  }
}

function decimal(figure: string): number {
  return Number(figure.replace(',', '.'));
}
