import { quote } from '../../units/text.ts';

/** A decimal or exponent number as GPX may hold it: no comma, no hex, nothing before or after but XML white space. */
const NUMBER = /^[ \t\r\n]*[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?[ \t\r\n]*$/u;

/**
 * Reads latitude and longitude in degrees.
 * @returns the place, or half a sentence saying what is wrong with it
 */
export function readPosition(
  attributes: Readonly<Record<string, string>>,
): { lat: number; lon: number } | string {
  const lat = readDegrees('latitude', attributes['lat'], 'lat', 90);
  if (typeof lat === 'string') return lat;
  const lon = readDegrees('longitude', attributes['lon'], 'lon', 180);
  return typeof lon === 'string' ? lon : { lat, lon };
}

function readDegrees(word: string, text: string | undefined, key: string, most: number): number | string {
  if (text === undefined) return `${word} is missing (attribute ${key})`;
  if (!NUMBER.test(text)) return `${word} ${quote(text)} is not a number in degrees such as 51.4779`;
  const degrees = Number(text);
  if (Math.abs(degrees) > most) return `${word} ${quote(text)} is not between -${most} and ${most} degrees`;
  return degrees;
}

const TIME = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d):(\d\d)([.,]\d+)?[ ]?(Z|[+-]\d\d:?\d\d)?$/iu;
const DAY_MS = 86_400_000;

/** Reads an ISO 8601 time into Unix milliseconds; without a zone it is UTC, as GPX says. NaN when unreadable. */
export function readTimeMs(text: string): number {
  const match = TIME.exec(text.trim());
  if (!match) return Number.NaN;
  const [year, month, day, hour, minute, second] = match.slice(1, 7).map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const monthDays = month === 2 ? (leap ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;
  if (month < 1 || month > 12 || day < 1 || day > monthDays) return Number.NaN;
  if (hour > 24 || minute > 59 || second > 60) return Number.NaN;
  const fraction = match[7] ? Number(`0.${match[7].slice(1)}`) : 0;
  const clockMs = Math.round(((hour * 60 + minute) * 60 + second + fraction) * 1000);
  return daysSince1970(year, month, day) * DAY_MS + clockMs - zoneMs(match[8]);
}

function zoneMs(zone: string | undefined): number {
  if (zone === undefined || zone.toUpperCase() === 'Z') return 0;
  const hours = Number(zone.slice(1, 3));
  const minutes = Number(zone.slice(-2));
  if (hours > 14 || minutes > 59) return Number.NaN;
  return (zone.startsWith('-') ? -1 : 1) * (hours * 60 + minutes) * 60_000;
}

/** Days of the Gregorian calendar from 1970-01-01; years begin in March so that the leap day comes last. */
function daysSince1970(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  return y * 365 + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + dayOfYear - 719_468;
}

/** Prints Unix milliseconds as GPX has it, e.g. 2026-05-01T10:00:00.000Z. */
export function printTime(timeMs: number): string {
  const days = Math.floor(timeMs / DAY_MS);
  const clock = timeMs - days * DAY_MS;
  let year = 1970 + Math.floor(days / 365.2425);
  while (daysSince1970(year, 1, 1) > days) year--;
  while (daysSince1970(year + 1, 1, 1) <= days) year++;
  let month = 12;
  while (daysSince1970(year, month, 1) > days) month--;
  const day = days - daysSince1970(year, month, 1) + 1;
  const part = (value: number, width = 2) => String(Math.floor(value)).padStart(width, '0');
  const date = `${part(year, 4)}-${part(month)}-${part(day)}`;
  const hms = `${part(clock / 3_600_000)}:${part((clock / 60_000) % 60)}:${part((clock / 1000) % 60)}`;
  return `${date}T${hms}.${part(clock % 1000, 3)}Z`;
}
