/** A reading of a wall clock and calendar; says nothing yet about where the wall stands. */
export interface WallTime {
  readonly year: number;
  /** 1 to 12 */
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
}

/** What the clocks of one place show at one instant. */
export interface LocalMoment extends WallTime {
  /** 1 Monday to 7 Sunday (ISO 8601) */
  readonly weekday: number;
  /** IANA name, such as Europe/London */
  readonly zone: string;
  /** how far this clock is ahead of UTC, summer time included */
  readonly offsetMinutes: number;
}

const MS_PER_MINUTE = 60_000;
const MS_PER_DAY = 86_400_000;

/** Days from 1970-01-01 to a date of the proleptic Gregorian calendar (H. Hinnant, days_from_civil). */
function daysSinceEpoch(year: number, month: number, day: number): number {
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/** The instant at which a clock on UTC shows this wall time. Milliseconds since 1970. */
export function utcMsOf(wall: WallTime): number {
  const days = daysSinceEpoch(wall.year, wall.month, wall.day);
  return days * MS_PER_DAY + (wall.hour * 60 + wall.minute) * MS_PER_MINUTE;
}

/** 1 Monday to 7 Sunday. 1970-01-01 was a Thursday. */
export function weekdayOf(wall: WallTime): number {
  const days = daysSinceEpoch(wall.year, wall.month, wall.day);
  return ((((days + 3) % 7) + 7) % 7) + 1;
}

const two = (value: number): string => String(value).padStart(2, '0');

/** As people of the trade write it: 2027-06-12 09:30. */
export function wallTimeText(wall: WallTime): string {
  return `${wall.year}-${two(wall.month)}-${two(wall.day)} ${two(wall.hour)}:${two(wall.minute)}`;
}

/** ISO 8601 with the offset of the place: 2027-06-12T09:42+01:00. */
export function isoText(moment: LocalMoment): string {
  const minutes = Math.abs(moment.offsetMinutes);
  const offset = `${moment.offsetMinutes < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
  return `${wallTimeText(moment).replace(' ', 'T')}${offset}`;
}
