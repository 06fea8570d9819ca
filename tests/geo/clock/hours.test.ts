import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { hoursHold, nextHoursChange } from '../../../geo/clock/hours.ts';
import { hoursText } from '../../../geo/clock/hours-text.ts';
import { type LocalMoment, wallTimeText, weekdayOf } from '../../../geo/clock/moment.ts';
import { readWallTime } from '../../../geo/clock/read-wall-time.ts';
import { clockOf, instantOf } from '../../../geo/clock/zone.ts';

const BERLIN = { lat: 52.52, lon: 13.4, country: 'DE' };
const LONDON = { lat: 51.5, lon: -0.12, country: 'GB' };
const VADUZ = { lat: 47.14, lon: 9.52, country: 'LI' };

function at(text: string, zone = 'Europe/Berlin'): LocalMoment {
  const wall = readWallTime(text);
  if (!wall.ok) throw new Error(wall.error.message);
  const instant = instantOf(wall.value, zone);
  const clock = instant.ok ? clockOf(zone, instant.value.unixMs) : instant;
  if (!clock.ok) throw new Error(clock.error.message);
  return { ...clock.value, ...wall.value, weekday: weekdayOf(wall.value) };
}
const hold = (hours: string, when: string, place: Parameters<typeof hoursHold>[2] = BERLIN) =>
  hoursHold(hours, at(when), place).is;

const mapped = process.env['TZ'];
afterAll(() => {
  if (mapped === undefined) delete process.env['TZ'];
  else process.env['TZ'] = mapped;
});

describe.each(['UTC', 'America/Los_Angeles', 'Pacific/Auckland'])(
  'on a computer whose clock runs on %s',
  (zone) => {
    const setClock = () => {
      process.env['TZ'] = zone;
      expect(Intl.DateTimeFormat().resolvedOptions().timeZone).toBe(zone);
    };

    it('hours are judged on the clock of the place', () => {
      setClock();
      expect(hold('Mo-Fr 07:00-17:00', '2027-06-14T07:00')).toBe('yes');
      expect(hold('Mo-Fr 07:00-17:00', '2027-06-14T06:59')).toBe('no');
      expect(hold('Mo-Fr 07:00-17:00', '2027-06-14T17:00')).toBe('no');
      expect(hold('Mo-Fr 07:00-17:00', '2027-06-13T12:00')).toBe('no');
      expect(hold('22:00-06:00', '2027-06-14T05:59')).toBe('yes');
      expect(hold('Oct-Mar', '2027-12-31T23:59')).toBe('yes');
    });

    it('sunset is the sunset of the place', () => {
      setClock();
      // Berlin, 21 June: the sun sets at 21:33 summer time, rises at 04:43 (almanac figures, from memory, ± 3 min)
      expect(hold('sunrise-sunset', '2027-06-21T21:25')).toBe('yes');
      expect(hold('sunrise-sunset', '2027-06-21T21:41')).toBe('no');
      expect(hold('sunrise-sunset', '2027-06-21T04:51')).toBe('yes');
      expect(hold('sunrise-sunset', '2027-06-21T04:35')).toBe('no');
    });

    it('public holidays are those of the country', () => {
      setClock();
      expect(hold('Mo-Fr 07:00-17:00; PH off', '2027-05-17T10:00', BERLIN)).toBe('no'); // Whit Monday
      expect(hold('Mo-Fr 07:00-17:00; PH off', '2027-05-17T10:00', LONDON)).toBe('yes');
      expect(hold('Mo-Fr 07:00-17:00; PH off', '2027-05-18T10:00', BERLIN)).toBe('yes');
    });

    it('an hour its own clock skips is still judged', () => {
      setClock();
      for (const day of ['2027-03-14', '2027-09-26', '2027-03-28'])
        expect(hold('00:00-06:00', `${day}T02:30`)).toBe('yes');
    });

    it('the next change is on the clock of the place', () => {
      setClock();
      const change = nextHoursChange('Mo-Fr 07:00-19:00', at('2027-06-14T12:00'), BERLIN);
      expect(change && wallTimeText(change)).toBe('2027-06-14 19:00');
    });
  },
);

describe('hours nobody can settle', () => {
  it('a holiday in part of the country leaves only that day open', () => {
    // Corpus Christi 2027: a holiday in Bavaria, not in Berlin
    expect(hold('Mo-Fr 07:00-17:00; PH off', '2027-05-27T10:00')).toBe('unknown');
    expect(hold('Mo-Fr 07:00-17:00; PH off', '2027-05-27T18:00')).toBe('no');
    // St Andrew's Day: Scotland only
    expect(hold('Mo-Fr 07:00-17:00; PH off', '2027-11-30T10:00', LONDON)).toBe('unknown');
  });

  it('a country without holiday data leaves open only what a holiday would change', () => {
    expect(hold('Mo-Fr 07:00-17:00; PH off', '2027-06-14T10:00', VADUZ)).toBe('unknown');
    expect(hold('Mo-Fr 07:00-17:00; PH off', '2027-06-14T20:00', VADUZ)).toBe('no');
    expect(hold('Su,PH 08:00-20:00', '2027-06-14T10:00', VADUZ)).toBe('unknown');
    expect(hold('Su,PH 08:00-20:00', '2027-06-13T10:00', VADUZ)).toBe('yes');
    expect(hoursHold('PH', at('2027-06-14T10:00'), undefined)).toMatchObject({ is: 'unknown' });
  });

  it('school holidays are never settled by themselves', () => {
    expect(hold('Mo-Fr 08:15-08:45; SH off', '2027-06-14T08:30')).toBe('unknown');
    expect(hold('Mo-Fr 08:15-08:45; SH off', '2027-06-14T12:30')).toBe('no');
  });

  it('remarks, free text, backward years and impossible dates are unknown, never no', () => {
    for (const hours of [
      '07:00-19:00 "school days only"',
      '15.03. bis 15.09. Betretungsverbot',
      '2015 Aug 1-2014 Aug 24',
      '2014 Sep 8-2014 Nov 31',
      'Mo-Fr 17:30; 19:35',
      'winter',
      '',
    ])
      expect(hold(hours, '2027-06-14T12:00'), hours).toBe('unknown');
  });

  it('stray semicolons say nothing, however many', () => {
    expect(hold(`${'; '.repeat(40)}22:00-03:00`, '2027-06-14T23:00')).toBe('yes');
    expect(hold(`${'; '.repeat(40)}22:00-03:00`, '2027-06-14T12:00')).toBe('no');
    expect(hold('Mo-Fr 07:00-17:00;; PH off ;', '2027-06-14T08:00')).toBe('yes');
    expect(hold(';;;', '2027-06-14T08:00')).toBe('unknown');
  });

  it('shapes the library never comes to an end over are unknown, and so is what is too long', () => {
    // years past the end of its calendar; the other days it would never leave
    for (const hours of [
      '520788; 21:57+21:57+',
      '520788 Jan 1-520789 Jan 2',
      '21:57+21:57+',
      '(((22:00-03:00',
    ])
      expect(hold(hours, '2027-06-14T23:00'), hours).toBe('unknown');
    expect(hold(`${'07:00-08:00,'.repeat(30)}09:00-10:00`, '2027-06-14T09:30')).toBe('unknown');
  });

  it('sunset without a position is unknown', () => {
    expect(hoursHold('sunset-21:00', at('2027-06-14T12:00'), undefined).is).toBe('unknown');
  });

  it('sunset where the sun does not set neither hangs nor throws', () => {
    const cape = { lat: 71.1, lon: 25.8, country: 'NO' };
    expect(['yes', 'no', 'unknown']).toContain(hoursHold('sunset-21:00', at('2027-06-21T12:00'), cape).is);
  });

  it('any text gives an answer', () => {
    const token = fc.constantFrom(
      'Mo',
      '-',
      'Fr',
      ' ',
      '07:00',
      '25:00',
      ';',
      'PH',
      'SH',
      'off',
      ',',
      '2027',
      'Jan',
      '(',
      ')',
      '"',
      'sunset',
      '+',
      '[1]',
      'week',
      '99999999',
    );
    const text = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 40 }),
      fc.array(token, { maxLength: 12 }).map((all) => all.join('')),
    );
    const moment = at('2027-06-14T12:00');
    fc.assert(
      fc.property(text, (hours) => ['yes', 'no', 'unknown'].includes(hoursHold(hours, moment, BERLIN).is)),
      { numRuns: 400 },
    );
  });
});

describe('hours in words', () => {
  it.each([
    ['Mo-Fr 07:00-17:00; PH off', 'Monday to Friday 07:00 to 17:00; not on public holidays'],
    ['22:00-06:00', '22:00 to 06:00'],
    ['Mo,We 9:00-12:00', 'Monday, Wednesday 09:00 to 12:00'],
    ['Mar 15-Sep 15', 'March 15 to September 15'],
    ['24/7', 'at all times'],
    ['sunset-21:00', 'sunset to 21:00'],
  ])('%s is said as “%s”', (hours, words) => {
    expect(hoursText(hours)).toBe(words);
  });
});
