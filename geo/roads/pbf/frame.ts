import type { StringTable } from './strings.ts';

/** What all elements of a block share. */
export interface BlockFrame {
  readonly strings: StringTable;
  /** nanodegrees per unit */
  readonly granularity: number;
  /** nanodegrees */
  readonly latOffset: number;
  readonly lonOffset: number;
}
