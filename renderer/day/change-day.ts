import { durationText } from '../../geo/clock/print-times.ts';
import type { DayPlan, DayStop } from '../../geo/day/plan.ts';
import type { ServiceOnWay } from '../../geo/day/service.ts';
import type { ServiceKind } from '../../geo/services/kinds.ts';
import { clip } from '../../geo/units/text.ts';
import { takeInto } from '../actions/take-way.ts';
import { dayPlan, setDay } from '../state/day.ts';
import { openedDrive } from '../state/opened.ts';
import { cursorM } from '../state/shown.ts';

/** One change of the open drive's day. */
function change(make: (plan: DayPlan) => DayPlan): void {
  setDay(make(dayPlan.peek()));
}

export function addStop(stop: DayStop): void {
  change((plan) => ({ ...plan, stops: [...plan.stops, stop] }));
}

/** @param at place of the stop in the plan */
export function removeStop(at: number): void {
  change((plan) => ({ ...plan, stops: plan.stops.filter((_, i) => i !== at) }));
}

export function changeStop(at: number, to: Partial<Pick<DayStop, 'name' | 'stayMin'>>): void {
  change((plan) => ({
    ...plan,
    stops: plan.stops.map((stop, i) => (i === at ? { ...stop, ...to } : stop)),
  }));
}

/** @param text as the field gives it; what is no date and time counts as none */
export function setHomeBy(text: string): void {
  const isTime = /^\d{4}-\d\d-\d\dT\d\d:\d\d$/.test(text);
  change(({ homeBy: _, ...plan }) => (isTime ? { ...plan, homeBy: text } : plan));
}

export function setBefore(kind: ServiceKind, wanted: boolean): void {
  change(({ before = [], ...plan }) => ({
    ...plan,
    before: wanted
      ? [...before.filter((each) => each !== kind), kind]
      : before.filter((each) => each !== kind),
  }));
}

/** The drive's own position at the cursor; undefined where none is open. */
export function placeAtCursor():
  | { readonly lat: number; readonly lon: number; readonly atM: number }
  | undefined {
  const atM = cursorM.peek();
  for (const { alongM, line } of openedDrive.peek()?.followed.legs ?? []) {
    const next = alongM.findIndex((m) => m >= atM);
    if (next < 0) continue;
    const before = Math.max(0, next - 1);
    const spanM = alongM[next]! - alongM[before]!;
    const share = spanM > 0 ? Math.max(0, (atM - alongM[before]!) / spanM) : 0;
    const mix = (from: number, to: number) => from + share * (to - from);
    const at = (axis: 0 | 1) => mix(line[2 * before + axis]!, line[2 * next + axis]!);
    return { lat: at(0), lon: at(1), atM };
  }
  return undefined;
}

/** Puts a place into the day, and the way there and back into the drive: both can be taken back together. */
export async function takeService({ way, stop, extraS, name }: ServiceOnWay): Promise<void> {
  const before = openedDrive.peek()?.followed.driveId;
  const plan = dayPlan.peek();
  if (before === undefined) return;
  if (way === undefined) {
    addStop(stop);
    return;
  }
  setDay(plan, before);
  const moved = ({ atM, ...rest }: DayStop): DayStop =>
    atM === undefined ? rest : { ...rest, atM: atM >= way.toM ? atM + way.extraM : atM };
  await takeInto([way], `Stop at ${clip(name, 60)}: ${sayMore(extraS)}.`, ({ followed }) =>
    setDay({ ...plan, stops: [...plan.stops.map(moved), stop] }, followed.driveId),
  );
}

/** "4 min more driving" */
export function sayMore(extraS: number): string {
  const minutes = Math.round(extraS / 60);
  if (minutes === 0) return 'on the way, no detour';
  return `${durationText(Math.abs(extraS))} ${minutes > 0 ? 'more' : 'less'} driving`;
}
