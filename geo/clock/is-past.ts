import { utcMsOf } from './moment.ts';
import { sayMoment } from './print-dates.ts';
import { readWallTime } from './read-wall-time.ts';

const MS_PER_MINUTE = 60_000;

/** Whether a moment was over by the minute. @param now the moment it is asked, ISO 8601 in UTC: given, since geo has no clock */
export function isPast(unixMs: number, now: string): boolean {
  const wall = readWallTime(now.slice(0, 16));
  return wall.ok && unixMs + MS_PER_MINUTE <= utcMsOf(wall.value);
}

/** @param leaveAt 2027-06-12T09:30 */
export function sayPast(leaveAt: string): string {
  return `This leave time is past: ${sayMoment(leaveAt)}.`;
}
