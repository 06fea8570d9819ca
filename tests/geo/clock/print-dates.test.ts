import { describe, expect, it } from 'vitest';
import { dayName, sayDate, weekdayOfDate } from '../../../geo/clock/print-dates.ts';
import { readWallTime } from '../../../geo/clock/read-wall-time.ts';

describe('a date in words', () => {
  it('has its day of the week', () => {
    // 12 June 2027 is a Saturday (calendar)
    expect(weekdayOfDate('2027-06-12T09:30')).toBe('Saturday');
    expect(sayDate('2027-06-12')).toBe('Saturday 12 June 2027');
    expect(sayDate('2027-06-12', '2027-06-11T09:30')).toBe('Saturday 12 June');
  });

  it('is nothing where there is no such day', () => {
    expect([weekdayOfDate(''), sayDate('2027-02-30')]).toEqual(['', '']);
  });
});

it('there is no eighth day of the week, no thirteenth month, and no year before the calendar', () => {
  expect(dayName(8)).toBe('');
  expect(weekdayOfDate('2027-13-01')).toBe('');
  expect(sayDate('2027-02-29')).toBe('');
  expect(readWallTime('0999-01-01T09:00')).toMatchObject({
    ok: false,
    error: { message: expect.stringContaining('has a year this program cannot count with') },
  });
});
