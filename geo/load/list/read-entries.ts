import { fail, ok, type Result } from '../../result.ts';
import type { Meant } from '../../units/decimal-feet.ts';
import { isOfInches, lengthEntry, nearestFeetEntry } from '../../units/entry-text.ts';
import type { Units } from '../../units/in-units.ts';
import { meantLengths } from '../../units/meant-entry.ts';
import { readEntryLength, readEntryMass, splitMinus } from '../../units/read-entry.ts';

import { ITEM_KG_MOST, ITEM_X_MOST_M } from './bounds.ts';

/** A mass as typed: kilograms, or stones and pounds with theirs; a minus before it for what is taken off. */
export function readItemKg(text: string): Result<number> {
  const { minus, figure } = splitMinus(text);
  if (figure === '') return fail('entry', 'Give a mass.');
  const read = readEntryMass(figure, { least: 0, most: ITEM_KG_MOST });
  if (!read.ok) return read;
  if (read.value > ITEM_KG_MOST) return fail('entry', `More than ${ITEM_KG_MOST} kg is not believed.`);
  const kg = Math.round(read.value * 1000) / 1000;
  return ok(!minus || kg === 0 ? kg : -kg);
}

/** How many as typed, a whole number. */
export function readCount(text: string, most: number): Result<number> {
  const count = /^\s*\d+\s*$/.test(text) ? Number(text) : 0;
  return count >= 1 && count <= most ? ok(count) : fail('entry', `Write a whole number from 1 to ${most}.`);
}

/** A distance behind the front axle as typed, metres or feet and inches; a minus before it for ahead of the axle. */
export function readX(text: string): Result<number> {
  const { minus, figure } = splitMinus(text);
  const read = readEntryLength(figure);
  if (!read.ok && read.error.code === 'doubtful-feet') return read;
  if (!read.ok)
    return fail('entry', `Write how far behind the front axle, as 2.75 or 9'0"; −0.4 is ahead of it.`);
  const m = Math.round(read.value * 10_000) / 10_000;
  if (m > ITEM_X_MOST_M) return fail('entry', `More than ${ITEM_X_MOST_M} m is not believed.`);
  return ok(!minus || m === 0 ? m : -m);
}

/** What was likely meant by a distance that is not believed. */
export function meantX(text: string): readonly Meant[] {
  return meantLengths(text, { least: 0, most: ITEM_X_MOST_M });
}

/** A mass for its field: at most three decimals, none that say nothing. */
export function kgField(kg: number): string {
  return String(Math.round(kg * 1000) / 1000).replace('-', '−');
}

/** A distance for its field: metres to the centimetre or as exact as it is, or feet and inches to the half inch. */
export function xField(xM: number, units: Units): string {
  if (isOfInches(xM)) return lengthEntry(xM, { inFeet: true });
  if (units === 'imperial') return nearestFeetEntry(xM);
  const cm = xM.toFixed(2);
  return (Math.abs(Number(cm) - xM) < 1e-9 ? cm : String(Math.round(xM * 10_000) / 10_000)).replace('-', '−');
}
