import { utcMsOf } from '../clock/moment.ts';
import { offsetIn, offsetRuns } from '../clock/offset-runs.ts';
import { readWallTime } from '../clock/read-wall-time.ts';
import type { Leaving } from '../drive/times/leaving.ts';
import { smallest } from '../lists.ts';

export const MINUTES_OF_DAY = 1440;
const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** Every minute of one day as a leave time. */
export interface LeaveDay {
  /** 2027-06-17 */
  readonly date: string;
  /** the moment each of the 1,440 minutes on the clock stands for, as `readLeaving` takes it; milliseconds since 1970 */
  readonly unixMs: Float64Array;
  /** the minute of the leave time given */
  readonly chosen: number;
}

/**
 * The day of a leave time, on the clock of the place where the drive begins.
 * Where clocks are put forward or back, minutes that are skipped or come twice stand for what the leave time would.
 * @param zone IANA name, of the place where the drive begins
 */
export function leaveDay(leaving: Leaving, zone: string): LeaveDay | undefined {
  const wall = readWallTime(leaving.text);
  if (!wall.ok) return undefined;
  const midnightMs = utcMsOf({ ...wall.value, hour: 0, minute: 0 });
  const runs = offsetRuns(zone, midnightMs - DAY_MS, midnightMs + 2 * DAY_MS);
  const offsets = runs.map(({ offsetMinutes }) => offsetMinutes);
  const [before] = offsets;
  if (before === undefined) return undefined;
  const unixMs = Float64Array.from({ length: MINUTES_OF_DAY }, (_, minute) => {
    const utcMs = midnightMs + minute * MINUTE_MS;
    const shown = offsets
      .map((offset) => ({ offset, ms: utcMs - offset * MINUTE_MS }))
      .filter(({ offset, ms }) => offsetIn(runs, ms) === offset);
    // the earlier where it comes twice; where it is skipped, as if the clocks had stayed as they were
    return shown.length === 0 ? utcMs - before * MINUTE_MS : smallest(shown.map(({ ms }) => ms));
  });
  return {
    date: leaving.text.trim().slice(0, 10),
    unixMs,
    chosen: wall.value.hour * 60 + wall.value.minute,
  };
}

/** `2027-06-17T06:45`; the day's end is the next day's beginning and stands as T24:00. */
export function leaveText({ date }: LeaveDay, minute: number): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date}T${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}
