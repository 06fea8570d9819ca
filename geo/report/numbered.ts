import type { Finding } from './finding.ts';

/** A finding under its number. */
export interface Numbered {
  readonly number: number;
  /** two digits at least, as files sort: `02` */
  readonly label: string;
  readonly finding: Finding;
}

/**
 * The one numbering of a drive's findings, in map, list, strip, GPX and CSV alike: those that are not folded, in driving
 * order from 1.
 */
export function numberedFindings(findings: readonly Finding[]): Numbered[] {
  return findings
    .filter(({ folded }) => folded !== true)
    .map((finding, index) => ({ number: index + 1, label: String(index + 1).padStart(2, '0'), finding }));
}
