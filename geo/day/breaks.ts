import { drivenAt, type Timetable } from '../drive/times/timetable.ts';
import { mix, shareOf } from '../earth/between.ts';
import { firstAtLeast } from '../earth/bisect.ts';
import type { MetStop } from './meet-stops.ts';

/** A break of 15 minutes after every two hours at the wheel: The Highway Code (UK), rule 91. */
export const BREAK = { afterS: 7200, min: 15 } as const;

/** Where breaks fall, metres along the drive: two hours of driving since the start, a break, or a stay as long as one. */
export function breaksAt(times: Timetable, stops: readonly MetStop[]): number[] {
  const rests = stops.filter(({ stop }) => stop.stayMin >= BREAK.min).map(({ atM }) => drivenAt(times, atM));
  const breaks: number[] = [];
  let restedS = 0;
  for (const untilS of [...rests, times.totalS]) {
    for (let s = restedS + BREAK.afterS; s < untilS; s += BREAK.afterS) breaks.push(placeAfter(times, s));
    restedS = untilS;
  }
  return breaks;
}

/** Where the drive is after so many seconds of driving. */
function placeAfter({ atM, seconds }: Timetable, s: number): number {
  const next = Math.max(1, firstAtLeast(seconds, s));
  return mix(atM[next - 1]!, atM[next]!, shareOf(s, seconds[next - 1]!, seconds[next]!));
}
