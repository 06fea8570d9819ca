import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { utcMsOf, wallTimeText, weekdayOf } from '../../../geo/clock/moment.ts';
import { readWallTime } from '../../../geo/clock/read-wall-time.ts';
import { clockOf, instantOf, zoneAt } from '../../../geo/clock/zone.ts';

const wall = (text: string) => {
  const read = readWallTime(text);
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
};
const instant = (text: string, zone: string) => {
  const found = instantOf(wall(text), zone);
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
};
const shown = (zone: string, unixMs: number) => {
  const clock = clockOf(zone, unixMs);
  if (!clock.ok) throw new Error(clock.error.message);
  return wallTimeText(clock.value);
};

describe('the clock of a place', () => {
  it('stands an hour ahead of London in Berlin, summer and winter', () => {
    const noon = utcMsOf(wall('2027-06-12T12:00'));
    expect(zoneAt(51.5, -0.12)).toEqual({ ok: true, value: 'Europe/London' });
    expect(clockOf('Europe/London', noon)).toMatchObject({
      ok: true,
      value: { hour: 13, zone: 'Europe/London', offsetMinutes: 60, weekday: 6 },
    });
    expect(zoneAt(52.5, 13.4)).toEqual({ ok: true, value: 'Europe/Berlin' });
    expect(clockOf('Europe/Berlin', noon)).toMatchObject({
      ok: true,
      value: { hour: 14, offsetMinutes: 120 },
    });
  });

  it('stands the same ahead of UTC through all the seconds of a minute', () => {
    const noon = utcMsOf(wall('2027-06-12T12:00'));
    for (const seconds of [0, 29, 31, 59.999])
      expect(clockOf('Europe/London', noon + seconds * 1000)).toMatchObject({
        ok: true,
        value: { minute: 0, offsetMinutes: 60 },
      });
  });

  it('is the nautical zone at sea', () => {
    expect(zoneAt(0, -30)).toEqual({ ok: true, value: 'Etc/GMT+2' });
  });

  it('has half-hour zones', () => {
    expect(shown('Asia/Kathmandu', utcMsOf(wall('2027-01-01T00:00')))).toBe('2027-01-01 05:45');
  });

  it('is refused for places off the Earth, unknown zones and times without a four-figure year', () => {
    expect(zoneAt(91, 0).ok).toBe(false);
    expect(zoneAt(Number.NaN, 0).ok).toBe(false);
    expect(clockOf('Middle/Earth', 0).ok).toBe(false);
    expect(clockOf('Europe/London', Number.NaN).ok).toBe(false);
    expect(clockOf('Europe/London', 1e18).ok).toBe(false);
  });
});

describe('a local wall time', () => {
  it('is one instant on an ordinary day', () => {
    expect(instant('2027-06-12T09:30', 'Europe/London')).toEqual({
      unixMs: utcMsOf(wall('2027-06-12T08:30')),
      occurs: 'once',
    });
  });

  it('that the clocks skip in spring is taken as if they had not moved', () => {
    const skipped = instant('2027-03-28T01:30', 'Europe/London');
    expect(skipped.occurs).toBe('skipped');
    expect(shown('Europe/London', skipped.unixMs)).toBe('2027-03-28 02:30');
  });

  it('that the clocks show twice in autumn is the earlier one', () => {
    const twice = instant('2027-10-31T01:30', 'Europe/London');
    expect(twice).toEqual({ unixMs: utcMsOf(wall('2027-10-31T00:30')), occurs: 'twice' });
  });

  it('comes back from its instant whatever the zone, unless skipped', () => {
    const zones = fc.constantFrom(
      'Europe/London',
      'America/St_Johns',
      'Australia/Lord_Howe',
      'Pacific/Apia',
      'UTC',
    );
    fc.assert(
      fc.property(zones, fc.integer({ min: 0, max: 4_000_000_000 }), (zone, seconds) => {
        const minute = Math.floor(seconds / 60) * 60_000;
        const clock = clockOf(zone, minute);
        if (!clock.ok) return false;
        const back = instantOf(clock.value, zone);
        if (!back.ok || back.value.occurs === 'skipped') return false;
        return back.value.occurs === 'twice' ? back.value.unixMs <= minute : back.value.unixMs === minute;
      }),
      { numRuns: 300 },
    );
  });
});

describe('the calendar', () => {
  it('knows the weekday of any date', () => {
    expect(weekdayOf(wall('1970-01-01T00:00'))).toBe(4);
    expect(weekdayOf(wall('2000-02-29T00:00'))).toBe(2);
    expect(weekdayOf(wall('2027-06-12T00:00'))).toBe(6);
  });

  it('refuses dates and times that do not exist, with a sentence', () => {
    for (const text of [
      '2027-02-29T09:30',
      '2027-13-01T09:30',
      '2027-06-12T24:00',
      '12.6.2027',
      '',
      '2027-06-12',
    ])
      expect(readWallTime(text), text).toMatchObject({ ok: false });
    expect(readWallTime('2028-02-29 09:30').ok).toBe(true);
  });
});
