import { computed, signal } from '@preact/signals';
import { isPlanned } from '../../geo/day/is-planned.ts';
import type { DayPlan } from '../../geo/day/plan.ts';
import type { StopTimes } from '../../geo/report/day.ts';
import type { ValueOf } from '../../main/contract/calls.ts';
import { report } from './check.ts';
import type { Doing } from './happening.ts';
import { openedDrive } from './opened.ts';

/** Days planned in this window, by the driveId they are planned for: a change of the drive that is taken back has its own again. */
export const dayPlans = signal<Readonly<Record<string, DayPlan>>>({});

const NO_STOPS: DayPlan = { stops: [] };

/** The day of the open drive. */
export const dayPlan = computed<DayPlan>(() => {
  const followed = openedDrive.value?.followed;
  return (followed && (dayPlans.value[followed.driveId] ?? followed.day)) ?? NO_STOPS;
});

/** Whether the part about the day is open. */
export const dayShown = signal(false);

/** What of the day a check is made with; nothing while nobody plans one. */
export const dayForCheck = computed<DayPlan | undefined>(() =>
  dayShown.value || isPlanned(dayPlan.value) ? dayPlan.value : undefined,
);

export function setDay(plan: DayPlan, driveId = openedDrive.peek()?.followed.driveId): void {
  if (driveId !== undefined) dayPlans.value = { ...dayPlans.peek(), [driveId]: plan };
}

/** A drive that takes the place of another has its day, unless it has one of its own. */
export function carryDay(from: string, to: string): void {
  const plan = dayPlans.peek()[from];
  if (plan !== undefined && dayPlans.peek()[to] === undefined) setDay(plan, to);
}

const NONE: readonly StopTimes[] = [];
/** The stops as the drive meets them. */
export const stopsMet = computed(() => report.value?.day?.stops ?? NONE);

/** Places on the way that were looked for. */
interface ServicesAsked {
  readonly doing?: Doing;
  readonly found?: ValueOf<'services'>;
  readonly problem?: string;
}
export const services = signal<ServicesAsked | undefined>(undefined);
