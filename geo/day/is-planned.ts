import type { DayPlan } from './plan.ts';

/** Whether anything is planned for it. */
export function isPlanned({ stops, homeBy, before = [] }: DayPlan): boolean {
  return stops.length > 0 || homeBy !== undefined || before.length > 0;
}
