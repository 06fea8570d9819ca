import type { Arbitrary } from 'fast-check';
import fc from 'fast-check';
import { seeded } from '../../support/random-drives.ts';

/** The source of everything made up for one try. */
export interface Random {
  /** 0 … below - 1 */
  below(below: number): number;
  chance(share: number): boolean;
  pick<T>(from: readonly T[]): T;
  /** a value of a fast-check arbitrary */
  draw<T>(arbitrary: Arbitrary<T>): T;
}

/** @param seed any number; each gives its own values, and always the same */
export function randomFrom(seed: number): Random {
  const next = seeded(seed);
  const below = (most: number) => Math.floor(next() * most);
  return {
    below,
    chance: (share) => next() < share,
    pick: (from) => from[below(from.length)]!,
    draw: (arbitrary) => fc.sample(arbitrary, { seed: below(2 ** 31), numRuns: 1 })[0]!,
  };
}

/** One number of several, for a seed of its own (FNV-1a over their digits). */
export function mixed(...parts: readonly (number | string)[]): number {
  let hash = 0x811c9dc5;
  for (const sign of parts.join('/')) hash = Math.imul(hash ^ sign.charCodeAt(0), 0x01000193);
  return hash >>> 0;
}
