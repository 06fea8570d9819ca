import type { Span } from './piece.ts';

/** Parts of the drive brought together where they touch, in driving order. */
export function joinSpans(spans: Iterable<Span>): Span[] {
  const joined: Span[] = [];
  for (const span of [...spans].sort((a, b) => a.fromM - b.fromM)) {
    const before = joined.at(-1);
    if (before && span.fromM <= before.toM + 1)
      joined[joined.length - 1] = { fromM: before.fromM, toM: Math.max(before.toM, span.toM) };
    else joined.push(span);
  }
  return joined;
}

/** Their length together, metres. */
export function lengthOfSpans(spans: readonly Span[]): number {
  return spans.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
}
