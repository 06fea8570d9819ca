import { z } from 'zod';

/** Why a cell is no longer what a check would give today. */
export const STALE = ['map', 'card', 'note', 'margin', 'leave', 'day'] as const;
export type Stale = (typeof STALE)[number];

/** What a cell was judged from, a fingerprint each. */
export const madeOfSchema = z.strictObject({
  /** of what the shelf holds about the drive */
  map: z.string(),
  /** of the vehicle's card */
  card: z.string(),
  /** of the firm's notes about the drive */
  note: z.string(),
  /** of the spare asked for, and of what stands in where a place does not tell */
  margin: z.string(),
  /** of the leave time; a cell kept by an earlier program has it in `drive` */
  leave: z.string().optional(),
  /** of the stops and the return hour; the same of an earlier program */
  day: z.string().optional(),
  /** of the drive's file, its track and the program: with another of these it is another cell */
  drive: z.string(),
});
export type MadeOf = z.infer<typeof madeOfSchema>;

/** Why the cell is stale, in the order of STALE; empty where it is not; undefined where it is of something else. */
export function staleOf(was: MadeOf, now: MadeOf): Stale[] | undefined {
  return was.drive === now.drive ? STALE.filter((each) => was[each] !== now[each]) : undefined;
}
