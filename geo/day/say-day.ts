import { clockText, durationText } from '../clock/print-times.ts';
import type { Day } from '../report/day.ts';

/**
 * Whether the return hour lies before the leave time, which is a slip, is missed as planned, or met by using up the
 * margin; undefined: neither, or nobody knows.
 */
export function howLate({ start, end }: Pick<Day, 'start' | 'end'>): 'before' | 'late' | 'short' | undefined {
  const { spareS, homeBy, arriveAt } = end;
  if (spareS === undefined || homeBy === undefined || arriveAt === undefined || spareS >= 0) return undefined;
  // from leaving to the return hour, short of the second that is cut off in what is spare
  if (spareS + start.marginOnS + start.drivingOnS + start.staysOnS <= 0) return 'before';
  return Math.ceil(start.marginOnS) + spareS < 0 ? 'late' : 'short';
}

/** Where the day does not fit before the return hour: by how much, and from which place on. */
export function sayLate({ start, stops, end }: Pick<Day, 'start' | 'stops' | 'end'>): string[] {
  const { spareS, homeBy, arriveAt } = end;
  const how = howLate({ start, end });
  if (how === undefined || spareS === undefined || homeBy === undefined || arriveAt === undefined) return [];
  if (how === 'before') return ['The return hour lies before the leave time: check the day.'];
  const date = start.leaveAt?.slice(0, 10);
  const short = durationText(-spareS);
  const shorter = stops.some(({ stayS }) => stayS > 0) ? 'leave earlier, stay shorter' : 'leave earlier';
  return [
    how === 'late'
      ? `Too late: you are at the end of the drive at ${clockText(arriveAt, date)}, and the vehicle is due there by ${clockText(homeBy, date)}. With the margin ${short} are missing: ${shorter}.`
      : `You arrive at ${clockText(arriveAt, date)}, in time, but ${short} of the margin are used up before you set off: ${shorter}.`,
  ];
}
