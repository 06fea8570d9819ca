import { fail, ok, type Result } from '../result.ts';
import { readLength } from './read-length.ts';

const KG_PER_POUND = 0.45359237;
const POUNDS_PER_STONE = 14;
const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
const MASS = new RegExp(`^(${NUMBER})\\s*(kg|t|lb|lbs|st)?(?:\\s*(${NUMBER})\\s*(?:lb|lbs))?$`, 'i');

/** A length as a person types it: metres, or feet and inches. @returns metres, or what would be understood */
export function readEntryLength(text: string): Result<number> {
  const read = readLength(text.trim());
  return read.kind === 'value'
    ? ok(read.value)
    : fail('entry', `"${text.trim().slice(0, 20)}" is no length: write 3.05, 3.05 m or 10'3".`);
}

/** A mass as a person types it: kilograms when no unit is written; tonnes, pounds and stones with theirs. */
export function readEntryMass(text: string): Result<number> {
  const match = MASS.exec(text.trim());
  const [, figure, unit = 'kg', pounds] = match ?? [];
  if (figure === undefined || (pounds !== undefined && unit.toLowerCase() !== 'st'))
    return fail(
      'entry',
      `"${text.trim().slice(0, 20)}" is no mass: write 3500, 3500 kg, 3.5 t or 12 st 7 lb.`,
    );
  const value = Number(figure.replace(',', '.'));
  const more = Number((pounds ?? '0').replace(',', '.')) * KG_PER_POUND;
  switch (unit.toLowerCase()) {
    case 't':
      return ok(value * 1000);
    case 'lb':
    case 'lbs':
      return ok(value * KG_PER_POUND);
    case 'st':
      return ok(value * POUNDS_PER_STONE * KG_PER_POUND + more);
    default:
      return ok(value);
  }
}
