import { describe, expect, it } from 'vitest';
import { plainHours } from '../../../geo/clock/plain-hours.ts';

describe('hours the library is given', () => {
  // OSM wiki, Key:opening_hours, examples of the syntax (from memory, unchecked)
  it.each([
    'Mo-Fr 08:00-12:00,13:00-17:30; Sa 08:00-12:00; PH off',
    'Mar 15-Sep 15',
    '2015 May 15-2015 Aug 23 Mo-Fr 07:00-17:00',
    'week 1-53/2 Fr 09:00-12:00; week 2-52/2 We 09:00-12:00',
    'Sep 20-Dec 31 (sunset-02:00)-(sunrise+02:00)',
    'Su[1],Th[-1] 10:00-12:00',
    'easter -2 days-easter +1 day: open "by arrangement"',
    'Mo-Su sunset-21:00 || 24/7 off',
    'PH ; PH+1 00:00-05:00',
    '08:00+',
  ])('%s', (hours) => {
    expect(plainHours(hours)?.replace(/\s*;\s*/g, ';')).toBe(hours.replace(/\s*;\s*/g, ';'));
  });

  it('empty rules are left out, but not within a remark', () => {
    expect(plainHours(' ;;Mo 07:00-08:00; ; Tu off "a;;b";')).toBe('Mo 07:00-08:00; Tu off "a;;b"');
  });

  it.each([
    ['07:00 08:00', 'two times run together'],
    ['20270 Jan 1', 'a number of five digits'],
    ['((sunset-02:00)-21:00)', 'brackets within brackets'],
    ['Mo-', 'a span without its end'],
    ['Mo, ,Tu', 'nothing between commas'],
    ['"never ends', 'a remark without its end'],
    ['Mo\u0000Tu', 'a sign that is none of the syntax'],
    ['Mo,'.repeat(30).slice(0, -1), 'more parts than a week has'],
    [`Mo 07:00-08:00 ${'off '.repeat(70)}`, 'longer than a tag value'],
  ])('%j is refused: %s', (hours) => {
    expect(plainHours(hours)).toBeUndefined();
  });
});
