import type { LoadFigures } from './figures.ts';
import { NOISE_KG } from './noise.ts';
import { decidingOf } from './sums.ts';

/** What must be left on each plate for a load not to be called tight, kilograms: scales and guesses are no better. */
export const LOAD_MARGIN_KG = 50;

/** Over a plate; kept by less than the margin, or by nothing at all; kept. */
export type LoadLevel = 'over' | 'tight' | 'within';

export function levelOf(
  { over, spareKg }: { readonly over: boolean; readonly spareKg: number },
  marginKg: number,
): LoadLevel {
  if (over) return 'over';
  return spareKg <= NOISE_KG || spareKg < marginKg - NOISE_KG ? 'tight' : 'within';
}

/** By what decides. */
export function loadLevel(figures: LoadFigures, marginKg: number): LoadLevel {
  return figures.over.length > 0 ? 'over' : levelOf(decidingOf(figures), marginKg);
}
