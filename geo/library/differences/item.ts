import type { Span } from '../../drive/drive.ts';
import type { DriveReport, Finding } from '../../report/report.ts';

/** A finding of either report, and where it lies by the newer one's distances. */
export interface Item {
  readonly finding: Finding;
  /** metres along the newer report's drive */
  readonly span: Span;
}

/** What the map has no road for: judged by its reach, not one against one. */
export function isOffMap({ subject, kind }: Finding): boolean {
  return subject === 'map' && (kind === 'off the map' || kind === 'nothing on the map');
}

/** Every finding of a report. @param newer from its metres to the newer report's */
export function itemsOf({ findings }: DriveReport, newer: (m: number) => number): Item[] {
  return findings.map((finding) => ({
    finding,
    span: { fromM: newer(finding.fromM), toM: newer(finding.toM) },
  }));
}

export function lengthM({ fromM, toM }: Span): number {
  return toM - fromM;
}

/** Metres that two spans share; below zero, how far apart they lie. */
export function sharedM(a: Span, b: Span): number {
  return Math.min(a.toM, b.toM) - Math.max(a.fromM, b.fromM);
}

/** The parts of a span that none of the others holds; the others may overlap. */
export function uncovered(span: Span, others: readonly Span[]): Span[] {
  const parts: Span[] = [];
  let reached = span.fromM;
  for (const { fromM, toM } of [...others].sort((a, b) => a.fromM - b.fromM)) {
    if (fromM >= span.toM) break;
    if (fromM > reached) parts.push({ fromM: reached, toM: fromM });
    reached = Math.max(reached, toM);
  }
  if (reached < span.toM) parts.push({ fromM: reached, toM: span.toM });
  return parts;
}
