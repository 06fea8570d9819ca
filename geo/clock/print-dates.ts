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

/** "Saturday 12 June" of a date or time; '' where it is none. */
export function sayDate(text: string): string {
  const wall = readWallTime(`${text.slice(0, 10)}T00:00`);
  if (!wall.ok) return '';
  return `${weekdayOfDate(text)} ${wall.value.day} ${itemAt(MONTHS, wall.value.month - 1)}`;
}
