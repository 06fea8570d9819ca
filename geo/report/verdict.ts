import type { Kind } from './kinds.ts';
import { LEVELS, type Level, type Verdict } from './level.ts';

/** As much of a finding as a verdict asks. */
interface Levelled {
  readonly level: Level;
  readonly folded?: true | undefined;
}

/** The worst level among the findings that are not folded, `clear` when there is none. */
export function verdictOf(findings: readonly Levelled[]): Verdict {
  return LEVELS.find((level) => placesAt(findings, level) > 0) ?? 'clear';
}

/** How many findings of a level are not folded. */
export function placesAt(findings: readonly Levelled[], level: Level): number {
  return findings.filter((finding) => finding.level === level && finding.folded !== true).length;
}

/**
 * The findings that made the verdict, in driving order: where to look first. None for `care` and `clear`, which stop
 * nobody; what is guessed is told as a whole (`sayGuessedShare`).
 */
export function decidingPlaces<T extends Levelled & { readonly kind: Kind }>(
  findings: readonly T[],
  verdict: Verdict,
): readonly T[] {
  if (verdict === 'care' || verdict === 'clear') return [];
  return findings.filter(
    ({ level, folded, kind }) => level === verdict && folded !== true && kind !== 'guessed',
  );
}
