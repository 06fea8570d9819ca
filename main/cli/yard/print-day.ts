import { sayPast } from '../../../geo/clock/is-past.ts';
import { sayMoment } from '../../../geo/clock/print-dates.ts';
import { clockText, durationText } from '../../../geo/clock/print-times.ts';
import type { DayPlan } from '../../../geo/day/plan.ts';
import { howLate } from '../../../geo/day/say-day.ts';
import { sayOpen } from '../../../geo/day/say-open.ts';
import type { StopTimes } from '../../../geo/report/day.ts';
import { LEVEL_WORD } from '../../../geo/report/level.ts';
import { distanceIn } from '../../../geo/units/in-units.ts';
import { printApart } from '../../../geo/units/print.ts';
import { clip, quote } from '../../../geo/units/text.ts';
import type { StopBeside } from '../../services/yard/stops-beside.ts';
import type { DayChecked } from './day-checked.ts';

/** What is kept of a drive's day, before a vehicle meets it. */
export function printPlan(
  name: string,
  {
    leaveAt,
    plan,
    beside,
    now,
  }: {
    readonly leaveAt?: string;
    readonly plan?: Pick<DayPlan, 'stops' | 'homeBy'>;
    readonly beside: readonly StopBeside[];
    /** on this computer's clock, 2027-06-12T09:30 */
    readonly now: string;
  },
): string {
  const stops = plan?.stops ?? [];
  const homeBy =
    plan?.homeBy === undefined ? 'no return hour' : `due at the end by ${sayMoment(plan.homeBy)}`;
  const lines = [
    `${quote(name, 100)}: ${leaveAt === undefined ? 'no leave time' : `leaves ${sayMoment(leaveAt)}`}, ${homeBy}.`,
    ...(leaveAt !== undefined && leaveAt < now ? [sayPast(leaveAt)] : []),
    ...stops.map(
      ({ name: stop, lat, lon, stayMin }, i) =>
        `  ${i + 1}. ${quote(stop, 100)} at ${lat},${lon}: ${stayMin} min`,
    ),
    ...beside.map(({ name: stop, awayM, swapped }) =>
      swapped
        ? `${quote(stop, 100)} does not lie on the drive, but with latitude and longitude swapped it does. Latitude comes first: take it out with --remove-stop, and put it in the other way round.`
        : `${quote(stop, 100)} lies ${printApart(awayM)} or more beside the drive as drawn. A stop is counted only on the road that is driven: put it there, or take it out with --remove-stop.`,
    ),
    ...(stops.length + (plan?.homeBy === undefined ? 0 : 1) > 0
      ? ['When to leave each stop at the latest: the same with --vehicle-id ID.']
      : [
          'No day is planned. Give it stops with --stop LAT,LON,MINUTES,NAME and a return hour with --home-by.',
        ]),
  ];
  return `${lines.join('\n')}\n`;
}

/** The day as one vehicle meets it: each stop with its times, what falls due, advice, what is not known. */
export function printDay(name: string, { day, vehicle, verdict, past }: DayChecked): string {
  const { start, end, stops, due, advice, missed, notes, margin } = day;
  const date = start.leaveAt?.slice(0, 10);
  const leaves = start.leaveAt === undefined ? 'at no time that is kept' : sayMoment(start.leaveAt);
  const spare = howLate(day) === 'before' ? '' : saySpare(end.spareS);
  const clock = (iso: string | undefined) => (iso === undefined ? '' : clockText(iso, date));
  const lines = [
    `${quote(name, 100)} with ${quote(vehicle.name, 100)}: ${LEVEL_WORD[verdict].toLowerCase()}`,
    `  leaves ${leaves}${start.latestLeaveAt === undefined ? '' : `, at the latest ${clock(start.latestLeaveAt)}`}`,
    ...(past && start.leaveAt !== undefined ? [`  ${sayPast(start.leaveAt)}`] : []),
    ...stops.flatMap((stop) => printStop(stop, clock)),
    `  at the end ${clock(end.arriveAt) || 'at a time nobody knows'}${end.homeBy === undefined ? '' : `, due there ${clock(end.homeBy)}`}${spare}`,
    ...due.map(({ say }) => `  - ${say}`),
    ...advice.map(({ atM, say }) => `  ${distanceIn('both', atM)}: ${say}`),
    ...missed.map(
      ({ name: stop }) => `  ${quote(stop, 100)} does not lie on the drive: it is not counted in.`,
    ),
    ...notes.map((note) => `  ${note}`),
    `  Margin kept back: ${Math.round(margin.drivingShare * 100)} % of the driving, ${Math.round(margin.perServiceS / 60)} minutes for each stop with tanks.`,
  ];
  return `${lines.join('\n')}\n`;
}

function printStop(stop: StopTimes, clock: (iso: string | undefined) => string): string[] {
  const { name, atM, stayS, arriveAt, leaveAt, latestLeaveAt } = stop;
  const times = [
    ...(arriveAt === undefined ? [] : [`there ${clock(arriveAt)}`]),
    `stay ${Math.round(stayS / 60)} min`,
    ...(leaveAt === undefined ? [] : [`leave ${clock(leaveAt)}`]),
    ...(latestLeaveAt === undefined ? [] : [`at the latest ${clock(latestLeaveAt)}`]),
  ];
  const open = sayOpen(stop);
  return [
    `  ${distanceIn('both', atM)} ${quote(name, 100)}: ${times.join(', ')}`,
    ...(open === undefined ? [] : [`      ${clip(open, 300)}`]),
  ];
}

function saySpare(spareS: number | undefined): string {
  if (spareS === undefined) return '';
  return spareS < 0
    ? `: ${durationText(-spareS)} are missing, the margin counted`
    : `: ${durationText(spareS)} to spare`;
}
