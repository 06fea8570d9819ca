import { itemAt } from '../lists.ts';
import { fail, ok, type Result } from '../result.ts';
import type { WallTime } from './moment.ts';

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

function daysIn(year: number, month: number): number {
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return month === 2 && leap ? 29 : itemAt(DAYS, month - 1);
}

/** Reads a leave time as the user writes it, 2027-06-12T09:30 (a space for the T will do; seconds are dropped). */
export function readWallTime(text: string): Result<WallTime> {
  const found = /^\s*(\d{4})-(\d{2})-(\d{2})[T ](\d{2}):(\d{2})(?::\d{2})?\s*$/i.exec(text);
  const refuse = (what: string) =>
    fail('time-unreadable', `“${text}” ${what}; write date and local time as 2027-06-12T09:30.`);
  if (found === null) return refuse('is not a date and time');
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0] = found.slice(1).map(Number);
  if (year < 1001 || year > 9998) return refuse('has a year this program cannot count with');
  if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month))
    return refuse('names a day that does not exist');
  if (hour > 23 || minute > 59) return refuse('names a time that does not exist');
  return ok({ year, month, day, hour, minute });
}
