import { cut } from '../units/text.ts';

const LENGTH_MAX = 60;

/**
 * A name from map data as it is drawn: one line, without control characters and marks that turn text round,
 * and not longer than a label can be. Undefined where nothing is left.
 */
export function labelText(name: string | undefined): string | undefined {
  if (name === undefined) return undefined;
  const plain = name
    .slice(0, 400)
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  return plain === '' ? undefined : cut(plain, LENGTH_MAX);
}
