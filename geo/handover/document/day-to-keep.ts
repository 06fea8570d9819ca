import { clockText } from '../../clock/print-times.ts';
import { dateOf, sayStop } from '../../day/say-stop.ts';
import type { Day, DayAdvice } from '../../report/day.ts';
import type { DriveReport } from '../../report/report.ts';
import { distanceIn } from '../../units/in-units.ts';
import { clip, listed, plainLine } from '../../units/text.ts';
import type { DayToKeep } from './document.ts';

/** The day's stops with their times, what falls due and what is advised; undefined where there is nothing to say. */
export function dayToKeep({ day }: DriveReport): DayToKeep | undefined {
  if (day === undefined) return undefined;
  const date = dateOf(day);
  const kept = {
    stops: day.stops.map((stop) => sayStop(stop, date)),
    due: day.due.map(({ by, say }) => ({
      at: by === undefined ? '' : clockText(by, date),
      say: plainLine(say),
    })),
    notes: [...day.notes, ...missed(day), ...day.advice.map((one) => sayAdvice(one, date))],
  };
  return Object.values(kept).every((list) => list.length === 0) ? undefined : kept;
}

function sayAdvice({ atM, at, say }: DayAdvice, date: string | undefined): string {
  const when = at === undefined ? '' : `, ${clockText(at, date)}`;
  return `At ${distanceIn('both', atM)}${when}: ${plainLine(say)}`;
}

function missed({ missed: all }: Day): string[] {
  return all.length === 0 ? [] : [`Not on this drive: ${listed(all.map(({ name }) => clip(name, 60)))}.`];
}
