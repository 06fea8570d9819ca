import { durationText } from '../clock/print-times.ts';
import { placeDriven } from '../drive/point-at.ts';
import { secondsAt } from '../drive/times/timetable.ts';
import { given } from '../given.ts';
import type { DayAdvice } from '../report/day.ts';
import { BREAK, breaksAt } from './breaks.ts';
import type { ClockAlong } from './clocks.ts';
import type { DayInput } from './day-input.ts';
import { sayWinding } from './say-winding.ts';
import { windingStretches } from './winding.ts';

/** Advice along the drive: breaks, and the cassette before a long winding stretch. In driving order. */
export function adviceOf(input: DayInput, clock: ClockAlong): DayAdvice[] {
  const { drive, roads, times, met, leaving } = input;
  const advise = (kind: DayAdvice['kind'], atM: number, say: string): DayAdvice => {
    const { lat, lon } = placeDriven(drive, roads, atM);
    const at = clock(atM, leaving && leaving.unixMs + 1000 * secondsAt(times, atM));
    return { kind, atM, lat, lon, ...given({ at }), say };
  };
  const breaks = breaksAt(times, met.stops).map((m) =>
    advise(
      'break',
      m,
      `A break of ${BREAK.min} min after ${durationText(BREAK.afterS)} of driving. It is not counted in the times: put it in as a stop.`,
    ),
  );
  const emptiedM = met.stops.find(({ stop }) => stop.services?.includes('cassette'))?.atM;
  const winding = windingStretches(drive, roads, input.line)
    .filter(({ fromM }) => emptiedM === undefined || emptiedM > fromM)
    .slice(0, 1)
    .map((stretch) => advise('cassette', stretch.fromM, sayWinding(stretch, input.units)));
  return [...breaks, ...winding].sort((a, b) => a.atM - b.atM);
}
