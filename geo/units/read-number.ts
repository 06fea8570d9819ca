import type { ReadingNote } from './reading.ts';

/** A plain decimal: digits with at most one point or comma. No sign, no exponent, no grouping. */
export const NUMBER = String.raw`\d+(?:[.,]\d+)?|[.,]\d+`;

export type NumberRead =
  | { readonly ok: true; readonly value: number; readonly notes: readonly ReadingNote[] }
  | { readonly ok: false; readonly reason: string };

/**
 * The value of text that matches NUMBER.
 * A comma before exactly three digits could be a thousands mark ("12,000"), so it is refused.
 */
export function readNumber(text: string): NumberRead {
  if (/,\d{3}$/.test(text)) return { ok: false, reason: `"${text}" may be thousands or decimals` };
  const value = Number(text.replace(',', '.'));
  if (!Number.isFinite(value)) return { ok: false, reason: 'not a number' };
  if (value <= 0) return { ok: false, reason: 'zero is no limit anyone could keep' };
  return { ok: true, value, notes: text.includes(',') ? ['decimal-comma'] : [] };
}
