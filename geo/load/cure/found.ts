import type { Drained, Handled, Remedy } from './remedies.ts';

/** One set of steps that cures. Kilograms. */
export interface Found {
  /** left behind or drained */
  readonly leftKg: number;
  readonly movedKg: number;
  readonly chosen: readonly Chosen[];
  readonly drained: readonly { readonly tank: Drained; readonly litres: number }[];
  /** spare of the plate nearest its limit, when all is done */
  readonly leastSpareKg: number;
}

/** An item, and what is done with it. */
export interface Chosen {
  readonly handled: Handled;
  readonly remedy: Remedy;
}

/** Differences below this are noise of binary fractions, of kilograms and of litres. */
export const NOISE = 1e-6;
