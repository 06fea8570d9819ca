import { z } from 'zod';
import { STOPS_MOST } from './bounds.ts';
import { type DayPlan, dayPlanSchema, dayStopSchema } from './plan.ts';

/** What was kept of a day: the plan, or a sentence where there is one that cannot be read. */
export type KeptDay =
  | { readonly day: DayPlan; readonly unread?: never }
  | { readonly day?: never; readonly unread: string };

/** A day that is dropped without a word would let the driver be late. */
const UNREAD =
  'The day kept with this drive cannot be read: its stops and its return hour are not counted in. It has to be planned anew.';

/** A stop may hold more, by a later program. */
const keptSchema = z.object({
  ...dayPlanSchema.shape,
  stops: z.array(z.object(dayStopSchema.shape)).max(STOPS_MOST),
});

/** The day as it is kept with a drive, without what a later program has added to it. */
export function keptDay(plan: Readonly<Record<string, unknown>>): KeptDay {
  const read = keptSchema.safeParse(plan);
  return read.success ? { day: read.data } : { unread: UNREAD };
}
