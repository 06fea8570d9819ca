import { fail, ok, type Result } from '../../result.ts';
import { readEntryLength, readEntryMass, splitMinus } from '../../units/read-entry.ts';
import { quote } from '../../units/text.ts';
import { type Bounds, PLACE_BOUNDS } from '../bounds.ts';

const { xM: X, capacityL: LITRES, limitKg: LIMIT_KG } = PLACE_BOUNDS;

/** A distance behind the front axle as typed: metres, or feet and inches; a minus before it for ahead of the axle. */
export function readPlaceX(text: string): Result<number> {
  const { minus, figure } = splitMinus(text);
  if (figure === '') return fail('entry', 'How far behind the front axle is missing.');
  const read = readEntryLength(figure);
  if (!read.ok) return read;
  const m = tidy(read.value);
  if (!minus || m === 0)
    return m <= X.most
      ? ok(m)
      : fail('entry', `More than ${X.most} m behind the front axle is not believed.`);
  return m <= -X.least
    ? ok(-m)
    : fail('entry', `More than ${-X.least} m ahead of the front axle is not believed.`);
}

/** What a tank holds as typed, litres. */
export function readLitres(text: string): Result<number> {
  const entry = text.trim();
  if (entry === '') return fail('entry', 'How many litres it holds is missing.');
  const [, figure] = /^(\d+(?:[.,]\d+)?)\s*(?:l|lit(?:re|er)s?)?$/i.exec(entry) ?? [];
  if (figure === undefined) return fail('entry', `${quote(entry, 20)} is no volume: write 105 or 105 l.`);
  // within the bounds as thousands and as decimals
  if (/^(?:1[.,]\d{3}|2[.,]000)$/.test(figure))
    return fail('entry', `${quote(figure)} may be thousands or decimals: write 1500, or 1.5.`);
  return within(Number(figure.replace(',', '.')), LITRES, 'l');
}

/** What a locker may carry as typed, kilograms, or stones and pounds with theirs. */
export function readLimit(text: string): Result<number> {
  const read = readEntryMass(text, LIMIT_KG);
  return read.ok ? within(read.value, LIMIT_KG, 'kg') : read;
}

function within(value: number, { least, most }: Bounds, unit: string): Result<number> {
  if (value > most) return fail('entry', `More than ${most} ${unit} is not believed.`);
  if (value < least) return fail('entry', `Less than ${least} ${unit} is not believed.`);
  return ok(tidy(value));
}

function tidy(value: number): number {
  return Math.round(value * 10_000) / 10_000;
}
