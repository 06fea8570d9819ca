import { afterAll, describe, expect, it } from 'vitest';
import { hoursHold } from '../../../geo/clock/hours.ts';
import { hoursChanges } from '../../../geo/clock/hours-changes.ts';
import { clockOf } from '../../../geo/clock/zone.ts';

const HOURS = [
  '07:00-09:00',
  'Mo-Fr 22:00-05:30; PH off',
  'sunrise-sunset',
  'SH 08:00-12:00',
  '02:15-02:45',
  'Oct-Mar 01:30-03:30',
  '24/7',
  'market day',
];
const PLACES = [
  { zone: 'Europe/Berlin', lat: 52.5, lon: 13.4, country: 'DE' },
  { zone: 'America/New_York', lat: 40.7, lon: -74, country: 'US' },
  { zone: 'Asia/Kolkata', lat: 28.6, lon: 77.2, country: 'IN' },
];
/** An ordinary day, and nights on which the clocks of Europe and of New York are changed (tz database 2024a). */
const DAYS = [Date.UTC(2027, 5, 16), Date.UTC(2027, 2, 27), Date.UTC(2027, 9, 30), Date.UTC(2027, 2, 13)];
const MINUTE_MS = 60_000;
/** Asked every so many minutes; that nothing changes within them unseen is not at stake. */
const STEP = 13;

const own = process.env['TZ'];
afterAll(() => {
  if (own === undefined) delete process.env['TZ'];
  else process.env['TZ'] = own;
});

describe.each(['UTC', 'Europe/Berlin', 'America/Los_Angeles'])(
  'on a computer whose clock runs on %s',
  (tz) => {
    it('between the changes of hours the answer stays the same', () => {
      process.env['TZ'] = tz;
      const wrong: unknown[] = [];
      for (const [i, text] of HOURS.entries())
        for (const fromMs of DAYS) {
          const place = PLACES[i % PLACES.length]!;
          const span = {
            zone: place.zone,
            fromMs: fromMs + i * MINUTE_MS,
            toMs: fromMs + 36 * 60 * MINUTE_MS,
          };
          const changes = new Set(hoursChanges(text, span, place));
          let before: string | undefined;
          for (let ms = span.fromMs; ms < span.toMs; ms += STEP * MINUTE_MS) {
            const clock = clockOf(place.zone, ms);
            const answer = clock.ok ? hoursHold(text, clock.value, place).is : '';
            const since = Array.from({ length: STEP }, (_, back) => ms - back * MINUTE_MS);
            if (before !== undefined && answer !== before && !since.some((at) => changes.has(at)))
              wrong.push([text, place.zone, ms]);
            before = answer;
          }
        }
      expect(wrong).toEqual([]);
    });
  },
);
