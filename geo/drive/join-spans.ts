import type { Span } from './drive.ts';

/** Spans in order, those that touch or lie less than `bridgeM` apart made one, empty ones left out. */
export function joinSpans(spans: readonly Span[], bridgeM: number): Span[] {
  const joined: Span[] = [];
  for (const span of [...spans].sort((a, b) => a.fromM - b.fromM)) {
    if (span.toM <= span.fromM) continue;
    const last = joined.at(-1);
    if (last !== undefined && span.fromM - last.toM <= bridgeM)
      joined[joined.length - 1] = { fromM: last.fromM, toM: Math.max(last.toM, span.toM) };
    else joined.push(span);
  }
  return joined;
}
