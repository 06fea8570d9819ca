import type { Span } from './drive.ts';

/** What of the spans lies within another, each cut to it; metres along the drive. */
export function cutSpans(spans: readonly Span[], within: Span): Span[] {
  return spans
    .filter(({ fromM, toM }) => toM > within.fromM && fromM < within.toM)
    .map(({ fromM, toM }) => ({
      fromM: Math.max(fromM, within.fromM),
      toM: Math.min(toM, within.toM),
    }));
}
