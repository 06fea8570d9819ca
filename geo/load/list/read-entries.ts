import { fail, ok, type Result } from '../../result.ts';
import { readEntryMass } from '../../units/read-entry.ts';

import { ITEM_KG_MOST, ITEM_X_MOST_M } from './bounds.ts';

/** A mass as typed: kilograms, or stones and pounds with theirs; a minus before it for what is taken off. */
export function readItemKg(text: string): Result<number> {
  const [, minus = '', figure = ''] = /^\s*([-−–]?)\s*(.*)$/.exec(text) ?? [];
  if (figure.trim() === '') return fail('entry', 'Give a mass.');
  const read = readEntryMass(figure, { least: 0, most: ITEM_KG_MOST });
  if (!read.ok) return read;
  if (read.value > ITEM_KG_MOST) return fail('entry', `More than ${ITEM_KG_MOST} kg is not believed.`);
  const kg = Math.round(read.value * 1000) / 1000;
  return ok(minus === '' || kg === 0 ? kg : -kg);
}

/** How many as typed, a whole number. */
export function readCount(text: string, most: number): Result<number> {
  const count = /^\s*\d+\s*$/.test(text) ? Number(text) : 0;
  return count >= 1 && count <= most ? ok(count) : fail('entry', `Write a whole number from 1 to ${most}.`);
}

/** A distance behind the front axle as typed, metres; negative ahead of it. */
export function readX(text: string): Result<number> {
  const figure = text.trim().replace(/^[−–]/, '-').replace(',', '.').replace(/\s*m$/i, '');
  if (!/^-?\d+(\.\d+)?$/.test(figure))
    return fail('entry', 'Write metres behind the front axle, as 2.75; −0.4 is ahead of it.');
  const m = Number(figure);
  return Math.abs(m) <= ITEM_X_MOST_M
    ? ok(m)
    : fail('entry', `More than ${ITEM_X_MOST_M} m is not believed.`);
}

/** A mass for its field: at most three decimals, none that say nothing. */
export function kgField(kg: number): string {
  return String(Math.round(kg * 1000) / 1000).replace('-', '−');
}

export function xField(xM: number): string {
  const cm = xM.toFixed(2);
  return (Math.abs(Number(cm) - xM) < 1e-9 ? cm : String(Math.round(xM * 10_000) / 10_000)).replace('-', '−');
}
