import type { Finding } from '../../report/report.ts';

/** What can have changed about a drive between two maps. */
export const DIFFERENCE_KINDS = ['new', 'gone', 'changed', 'now mapped', 'road changed'] as const;
export type DifferenceKind = (typeof DIFFERENCE_KINDS)[number];

/** One thing that a newer map says otherwise of a drive. */
export interface Difference {
  /**
   * - `new`: only the newer map has it; also a part of the drive that is off the map now
   * - `gone`: only the older map had it, and the newer one has the road there
   * - `changed`: the same limit with another figure, other hours or another level; settled by the firm's own note
   * - `now mapped`: was off the map, or open for want of data, and the map tells now
   * - `road changed`: the drive runs there on another road, or on a road of another class
   */
  readonly kind: DifferenceKind;
  /** the newer report's id of the finding, else the older one's; a changed road has an id of its own */
  readonly finding: string;
  readonly was?: Finding;
  readonly now?: Finding;
  /** metres along the newer report's drive */
  readonly fromM: number;
  readonly toM: number;
  /** one plain sentence */
  readonly say: string;
}

/** What became of one drive with one vehicle on a newer map. */
export interface Comparison {
  /** in driving order; none is the usual case */
  readonly differences: readonly Difference[];
  /** the day of the data of either map, 2026-05-01; absent where a file of it tells none */
  readonly wasDay?: string;
  readonly nowDay?: string;
  /** both days, and what they mean, in one sentence or two */
  readonly say: string;
}
