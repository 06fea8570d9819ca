import { itemAt } from '../../lists.ts';
/** Everything that must not be exceeded, as one row of figures: gross, front, rear, then each place with a limit. */
export type Row = readonly number[];

/** A row with another one of the same limits put on it, so many times. */
export function changed(row: Row, change: Row, times = 1): number[] {
  return row.map((kg, limit) => kg + times * itemAt(change, limit));
}
