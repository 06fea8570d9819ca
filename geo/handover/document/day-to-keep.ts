import { clockText } from '../../clock/print-times.ts';
import { sayOpen } from '../../day/say-open.ts';
import type { Day, DayAdvice, StopTimes } from '../../report/day.ts';
import type { DriveReport } from '../../report/report.ts';
import { DO_SERVICE } from '../../services/kinds.ts';
import { distanceIn } from '../../units/in-units.ts';
import { clip, listed, lowerFirst, plainLine } from '../../units/text.ts';
import type { DayToKeep } from './document.ts';

/** The day's stops with their times, what falls due and what is advised; undefined where there is nothing to say. */
export function dayToKeep({ day }: DriveReport): DayToKeep | undefined {
  if (day === undefined) return undefined;
  const date = (day.start.leaveAt ?? day.start.latestLeaveAt)?.slice(0, 10);
  const kept = {
    stops: day.stops.map((stop) => stopToKeep(stop, date)),
    due: day.due.map(({ by, say }) => ({
      at: by === undefined ? '' : clockText(by, date),
      say: plainLine(say),
    })),
    notes: [...day.notes, ...missed(day), ...day.advice.map((one) => sayAdvice(one, date))],
  };
  return Object.values(kept).every((list) => list.length === 0) ? undefined : kept;
}

function stopToKeep(stop: StopTimes, date: string | undefined): DayToKeep['stops'][number] {
  const { name, atM, arriveAt, leaveAt, latestLeaveAt, services } = stop;
  const open = sayOpen(stop);
  const times = [
    ...(arriveAt === undefined ? [] : [`there ${clockText(arriveAt, date)}`]),
    ...(leaveAt === undefined ? [] : [`leave ${clockText(leaveAt, date)}`]),
    ...(latestLeaveAt === undefined ? [] : [`at the latest ${clockText(latestLeaveAt, date)}`]),
  ];
  const todo = listed(services.map((kind, i) => (i === 0 ? DO_SERVICE[kind] : lowerFirst(DO_SERVICE[kind]))));
  return {
    name: clip(name),
    at: distanceIn('both', atM),
    times: times.join(', '),
    note: [...(todo === '' ? [] : [`${todo}.`]), ...(open === undefined ? [] : [plainLine(open)])].join(' '),
  };
}

function sayAdvice({ atM, at, say }: DayAdvice, date: string | undefined): string {
  const when = at === undefined ? '' : `, ${clockText(at, date)}`;
  return `At ${distanceIn('both', atM)}${when}: ${plainLine(say)}`;
}

function missed({ missed: all }: Day): string[] {
  return all.length === 0 ? [] : [`Not on this drive: ${listed(all.map(({ name }) => clip(name, 60)))}.`];
}
