import { describe, expect, it } from 'vitest';
import { sayDate, weekdayOfDate } from '../../../geo/clock/print-dates.ts';

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
