import { describe, expect, it } from 'vitest';
import { clockText, durationText } from '../../../geo/clock/print-times.ts';

describe('times in words', () => {
  it('the clock carries its date only on another day', () => {
    expect(clockText('2027-06-12T09:33+01:00', '2027-06-12T09:30')).toBe('09:33');
    expect(clockText('2027-06-13T00:10+01:00', '2027-06-12T23:30')).toBe('Sunday 13 June, 00:10');
    expect(clockText('2028-01-01T00:10+00:00', '2027-12-31T23:30')).toBe('Saturday 1 January 2028, 00:10');
    expect(clockText('2027-06-13T00:10+01:00')).toBe('00:10');
  });

  it('a minute is the least', () => {
    expect([durationText(5), durationText(3900)]).toEqual(['1 min', '1 h 5 min']);
  });
});
