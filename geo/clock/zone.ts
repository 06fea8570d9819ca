import lookUpZone from '@photostructure/tz-lookup';
import { smallest } from '../lists.ts';
import { fail, ok, type Result } from '../result.ts';
import { type LocalMoment, utcMsOf, type WallTime, weekdayOf } from './moment.ts';

/** The IANA time zone in force at a place. Degrees; at sea the nautical zone. */
export function zoneAt(lat: number, lon: number): Result<string> {
  if (!(Math.abs(lat) <= 90 && Math.abs(lon) <= 180))
    return fail('place-off-earth', `No time zone at ${lat}, ${lon}: that is not a place on Earth.`);
  return ok(lookUpZone(lat, lon));
}

// building a formatter costs a hundred times a reading, and a drive meets one or two zones
const formatters = new Map<string, Intl.DateTimeFormat | undefined>();

function formatterOf(zone: string): Intl.DateTimeFormat | undefined {
  if (!formatters.has(zone)) {
    try {
      const format = new Intl.DateTimeFormat('en-GB', {
        timeZone: zone,
        calendar: 'gregory',
        hourCycle: 'h23',
        year: 'numeric',
        month: 'numeric',
        day: 'numeric',
        hour: 'numeric',
        minute: 'numeric',
      });
      formatters.set(zone, format);
    } catch {
      formatters.set(zone, undefined);
    }
  }
  return formatters.get(zone);
}

/** Instants a four-figure year can name: 1000-01-01 to 9999-12-31. */
const FIRST_MS = -30_610_224_000_000;
const LAST_MS = 253_402_300_799_999;

/**
 * What the clocks of a zone show at an instant.
 * @param unixMs milliseconds since 1970-01-01T00:00Z
 */
export function clockOf(zone: string, unixMs: number): Result<LocalMoment> {
  if (!(unixMs >= FIRST_MS && unixMs <= LAST_MS))
    return fail('time-out-of-range', `${unixMs} is not a time between the years 1000 and 9999.`);
  const formatter = formatterOf(zone);
  if (formatter === undefined)
    return fail(
      'zone-unknown',
      `“${zone}” is not a time zone this program knows; use a name such as Europe/London.`,
    );
  const read = { year: 0, month: 0, day: 0, hour: 0, minute: 0 };
  for (const { type, value } of formatter.formatToParts(unixMs))
    if (type in read) read[type as keyof typeof read] = Number(value);
  // the fields are whole minutes, so the instant is cut to its minute before they are compared
  const offsetMinutes = Math.round((utcMsOf(read) - Math.floor(unixMs / 60_000) * 60_000) / 60_000);
  return ok({ ...read, weekday: weekdayOf(read), zone, offsetMinutes });
}

/** The instant a wall time stands for. `skipped` and `twice` happen when clocks are put forward or back. */
export interface Instant {
  readonly unixMs: number;
  readonly occurs: 'once' | 'skipped' | 'twice';
}

const DAY_MS = 86_400_000;

/**
 * The instant at which the clocks of a zone show a wall time. When clocks go back and show it twice, the earlier
 * instant; when they go forward past it, as if they had not (02:30 becomes 03:30), as RFC 5545 §3.3.5 has it.
 */
export function instantOf(wall: WallTime, zone: string): Result<Instant> {
  const utcMs = utcMsOf(wall);
  const before = clockOf(zone, utcMs - DAY_MS);
  const after = clockOf(zone, utcMs + DAY_MS);
  if (!before.ok) return before;
  if (!after.ok) return after;
  const candidates = [before.value.offsetMinutes, after.value.offsetMinutes].map(
    (offset) => utcMs - offset * 60_000,
  );
  const shown = candidates.filter((unixMs) => {
    const clock = clockOf(zone, unixMs);
    return clock.ok && utcMsOf(clock.value) === utcMs;
  });
  const first = smallest(shown);
  if (shown.length === 0)
    return ok({ unixMs: utcMs - before.value.offsetMinutes * 60_000, occurs: 'skipped' });
  return ok({ unixMs: first, occurs: shown.some((unixMs) => unixMs !== first) ? 'twice' : 'once' });
}
