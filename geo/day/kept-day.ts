import { type DayPlan, dayPlanSchema } from './plan.ts';

/** The day as it is kept with a drive, without what a later program has added to it. */
export function keptDay(plan: Readonly<Record<string, unknown>>): DayPlan | undefined {
  const { stops, homeBy, before } = plan;
  const read = dayPlanSchema.safeParse({ stops, homeBy, before });
  return read.success ? read.data : undefined;
}
