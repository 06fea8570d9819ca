import { clockText } from '../../clock/print-times.ts';
import type { Day, StopTimes } from '../../report/day.ts';
import type { DriveReport } from '../../report/report.ts';
import { DO_SERVICE } from '../../services/kinds.ts';
import { distanceIn } from '../../units/in-units.ts';
import { clip, listed, lowerFirst, plainLine } from '../../units/text.ts';
import type { DayToKeep } from './document.ts';

/** The day's stops with their times, and what falls due; undefined where no day is planned. */
export function dayToKeep({ day }: DriveReport): DayToKeep | undefined {
  if (day === undefined || (day.stops.length === 0 && day.due.length === 0)) return undefined;
  const date = (day.start.leaveAt ?? day.start.latestLeaveAt)?.slice(0, 10);
  return {
    stops: day.stops.map((stop) => stopToKeep(stop, date)),
    due: day.due.map(({ by, say }) => ({
      at: by === undefined ? '' : clockText(by, date),
      say: plainLine(say),
    })),
    notes: [...day.notes, ...missed(day)],
  };
}

function stopToKeep(stop: StopTimes, date: string | undefined): DayToKeep['stops'][number] {
  const { name, atM, arriveAt, leaveAt, latestLeaveAt, services, open } = stop;
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
    note: [...(todo === '' ? [] : [`${todo}.`]), ...(open === undefined ? [] : [plainLine(open.say)])].join(
      ' ',
    ),
  };
}

function missed({ missed: all }: Day): string[] {
  return all.length === 0 ? [] : [`Not on this drive: ${listed(all.map(({ name }) => clip(name, 60)))}.`];
}
