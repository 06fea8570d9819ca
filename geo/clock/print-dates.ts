import { itemAt } from '../lists.ts';
import { weekdayOf } from './moment.ts';
import { readWallTime } from './read-wall-time.ts';

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** The name of a weekday, 1 Monday to 7 Sunday; '' for no such day. */
export function dayName(weekday: number): string {
  return DAYS[weekday - 1] ?? '';
}

/** "Saturday" of a date or time, 2027-06-12T09:30; '' where it is none. */
export function weekdayOfDate(text: string): string {
  const wall = readWallTime(`${text.slice(0, 10)}T00:00`);
  return wall.ok ? dayName(weekdayOf(wall.value)) : '';
}

/**
 * "Saturday 12 June 2027" of a date or time, as people read every date that has a weekday; '' where it is none.
 * @param beside a date that is read with it: the year is said where it is another
 */
export function sayDate(text: string, beside = ''): string {
  const wall = readWallTime(`${text.slice(0, 10)}T00:00`);
  if (!wall.ok) return '';
  const { year, month, day } = wall.value;
  const date = `${weekdayOfDate(text)} ${day} ${itemAt(MONTHS, month - 1)}`;
  return beside.startsWith(text.slice(0, 4)) ? date : `${date} ${year}`;
}

/** "Saturday 12 June 2027, 09:30" of a wall time, 2027-06-12T09:30 or longer. @param beside as for `sayDate` */
export function sayMoment(text: string, beside?: string): string {
  return `${sayDate(text, beside)}, ${text.slice(11, 16)}`;
}

/** `1 May 2026` of `2026-05-01`: a day whose weekday says nothing. */
export function dayInWords(day: string): string {
  const [year, month, date] = day.split('-').map(Number);
  return `${date} ${MONTHS[(month ?? 1) - 1] ?? month} ${year}`;
}
