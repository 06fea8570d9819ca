/*
 * The one file of geo that touches Date: the opening-hours library takes one and reads it on the clock of the
 * computer. A Date is built here from the place's own clock fields, so that the computer's clock shows the place's
 * time, and its fields are read back the same way. The current time is never asked for.
 */
import type OpeningHours from 'opening_hours';
import { smallest } from '../lists.ts';
import { holidayRegions } from './holidays.ts';
import { type LocalMoment, type WallTime, weekdayOf } from './moment.ts';
import { quietly, readHours } from './read-hours.ts';

/** Where hours are judged: sunrise needs the position, public holidays the country (ISO 3166-1 alpha-2). */
export interface HoursPlace {
  readonly lat: number;
  readonly lon: number;
  readonly country?: string | undefined;
}

export type HoursAnswer =
  | { readonly is: 'yes' }
  | { readonly is: 'no' }
  | { readonly is: 'unknown'; readonly why: string };

const YES: HoursAnswer = { is: 'yes' };
const NO: HoursAnswer = { is: 'no' };
const unknown = (why: string): HoursAnswer => ({ is: 'unknown', why });

/** The answer for hours that cannot be read at all. */
export const UNREADABLE_HOURS: HoursAnswer = unknown('the hours are not readable');

const WEEKDAYS = ['Mo', 'Tu', 'We', 'Th', 'Fr', 'Sa', 'Su'];
const PUBLIC_HOLIDAY = /(?<![\p{L}])PH(?![\p{L}])/giu;
const SCHOOL_HOLIDAY = /(?<![\p{L}])SH(?![\p{L}])/giu;
const SUN = /sunrise|sunset|dawn|dusk/i;

/** Spellings the library refuses though they have one meaning. */
function tidy(text: string): string {
  return text
    .replace(/\b24\s*h\b/gi, '00:00-24:00')
    .replace(/\(\s*(\d{1,2}:\d{2}\s*-\s*\d{1,2}:\d{2})\s*\)/g, '$1');
}

/** A range of years that runs backwards would be taken for one that is always open. */
function yearsRunBackwards(text: string): boolean {
  return [...text.matchAll(/\b(\d{4})\b[^;,\d]*\d*[^;,\d]*-\s*(\d{4})\b/g)].some(
    ([, from, to]) => Number(from) > Number(to),
  );
}

function dateAt(wall: WallTime): Date {
  return new Date(wall.year, wall.month - 1, wall.day, wall.hour, wall.minute);
}

function wallOf(date: Date): WallTime {
  return {
    year: date.getFullYear(),
    month: date.getMonth() + 1,
    day: date.getDate(),
    hour: date.getHours(),
    minute: date.getMinutes(),
  };
}

const sameWall = (a: WallTime, b: WallTime): boolean =>
  a.hour === b.hour && a.minute === b.minute && a.day === b.day;

/**
 * The library works out sunrise as an instant and reads it on the computer's clock. Moving the meridian by the
 * difference of the two clocks (15° an hour) makes it read as the place's own time, within seconds.
 */
function meridianFor(place: HoursPlace, moment: LocalMoment, date: Date): number {
  return place.lon - (moment.offsetMinutes + date.getTimezoneOffset()) / 4;
}

function stateAt(hours: OpeningHours, date: Date): HoursAnswer {
  try {
    if (hours.getUnknown(date))
      return unknown(hours.getComment(date) ?? 'the map marks the hours as uncertain');
    return hours.getState(date) ? YES : NO;
  } catch {
    return unknown('the hours cannot be worked out for that day');
  }
}

/** One answer where all agree; otherwise unknown for the reason given. */
function agreed(answers: readonly HoursAnswer[], why: string): HoursAnswer {
  const [first] = answers;
  if (first === undefined) return unknown(why);
  const odd = answers.find((answer) => answer.is !== first.is);
  return odd === undefined ? first : unknown(why);
}

const has = (text: string, mark: RegExp): boolean => text.search(mark) >= 0;

const SUPPOSED = ['holiday', 'other day'] as const;
type SupposedDay = (typeof SUPPOSED)[number];

/** The text with a holiday mark read as this day, or as a day that has no bearing on it. */
function supposing(text: string, mark: RegExp, day: SupposedDay, moment: WallTime): string {
  const weekday = weekdayOf(moment);
  const stand = WEEKDAYS[day === 'holiday' ? weekday - 1 : (weekday + 2) % 7] as string;
  return text.replace(mark, stand);
}

interface Reading {
  readonly text: string;
  readonly state: string;
}

/** Every way the text can be taken where holidays are not, or not everywhere, known. */
function readingsOf(text: string, moment: WallTime, place: HoursPlace): Reading[] {
  const regions = holidayRegions(place.country);
  let texts = [text];
  const suppose = (mark: RegExp) => {
    texts = texts.flatMap((each) => SUPPOSED.map((day) => supposing(each, mark, day, moment)));
  };
  // school holidays differ from school to school and are known for few years
  if (has(text, SCHOOL_HOLIDAY)) suppose(SCHOOL_HOLIDAY);
  const publicHoliday = has(text, PUBLIC_HOLIDAY);
  if (publicHoliday && regions.length === 0) suppose(PUBLIC_HOLIDAY);
  const states = publicHoliday && regions.length > 0 ? regions : [''];
  return texts.flatMap((each) => states.map((state) => ({ text: each, state })));
}

/** A holiday mark grown together with something else: the library would complain on the console and give up. */
function hasStrayHoliday({ text }: Reading, place: HoursPlace): boolean {
  const spoken = text.replace(/"[^"]*"/g, '');
  return /SH/i.test(spoken) || (/PH/i.test(spoken) && holidayRegions(place.country).length === 0);
}

function compileAll(
  text: string,
  moment: LocalMoment,
  place: HoursPlace,
  date: Date,
): OpeningHours[] | undefined {
  if (yearsRunBackwards(text)) return undefined;
  const lon = meridianFor(place, moment, date);
  const country = place.country?.toLowerCase() ?? '';
  const readings = readingsOf(tidy(text), moment, place);
  if (readings.some((reading) => hasStrayHoliday(reading, place))) return undefined;
  const all = readings.map(({ text: each, state }) =>
    readHours(each, { lat: place.lat, lon, country, state }),
  );
  return all.every((hours) => hours !== undefined) ? all : undefined;
}

/**
 * Whether hours in the opening_hours syntax hold at the moment a place's own clock shows.
 * `unknown` carries the reason: unreadable text, a comment, a holiday nobody can tell, sunrise without a position.
 */
export function hoursHold(text: string, moment: LocalMoment, place: HoursPlace | undefined): HoursAnswer {
  if (place === undefined && SUN.test(text))
    return unknown('sunrise and sunset need the position of the place');
  const where = place ?? { lat: 0, lon: 0 };
  const date = dateAt(moment);
  // the computer's own clock may skip this hour: the hours either side must then agree
  const shift = (hours: number) => new Date(date.getTime() + hours * 3_600_000);
  const dates = sameWall(wallOf(date), moment) ? [date] : [shift(-1), date];
  const compiled = compileAll(text, moment, where, date);
  if (compiled === undefined) return UNREADABLE_HOURS;
  const answers = quietly(() => compiled.flatMap((hours) => dates.map((each) => stateAt(hours, each))));
  const why = dependsOnHolidays(text)
    ? 'it depends on whether the day is a holiday there, which is not known'
    : 'the hours cannot be worked out for that minute';
  return agreed(answers, why);
}

/** Whether the computer's own clock is neither put forward nor back from the day before to two days after. */
export function ownClockIsEven(day: WallTime): boolean {
  const offset = (days: number) => new Date(day.year, day.month - 1, day.day + days).getTimezoneOffset();
  return offset(-1) === offset(3);
}

/** Whether a text means another thing on one day than on the next because holidays are supposed, not known. */
export function dependsOnHolidays(text: string): boolean {
  return has(text, PUBLIC_HOLIDAY) || has(text, SCHOOL_HOLIDAY);
}

/** Whether the position of the place has a say in the hours. */
export function dependsOnSun(text: string): boolean {
  return SUN.test(text);
}

const LOOK_AHEAD_MS = 15 * 86_400_000;

/** When the answer next changes within a fortnight, on the place's own clock; undefined when it does not or nobody can tell. */
export function nextHoursChange(
  text: string,
  moment: LocalMoment,
  place: HoursPlace | undefined,
): WallTime | undefined {
  if (place === undefined && SUN.test(text)) return undefined;
  const date = dateAt(moment);
  const compiled = compileAll(text, moment, place ?? { lat: 0, lon: 0 }, date);
  if (compiled === undefined) return undefined;
  try {
    const limit = new Date(date.getTime() + LOOK_AHEAD_MS);
    const changes = quietly(() =>
      compiled.map((hours) => hours.getNextChange(date, limit)?.getTime() ?? Number.POSITIVE_INFINITY),
    );
    const first = smallest(changes);
    return first > date.getTime() && first <= limit.getTime() ? wallOf(new Date(first)) : undefined;
  } catch {
    return undefined;
  }
}
