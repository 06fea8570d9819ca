import { describe, expect, it } from 'vitest';
import { sayMapAge } from '../../../geo/report/map-age.ts';

const NOW = '2026-11-27T05:00:00.000Z';
const of = (...dates: (string | undefined)[]) =>
  sayMapAge(
    dates.map((dataDate) => ({ dataDate })),
    NOW,
  );

describe('the date of the map', () => {
  it('of the last half year is told and no more', () => {
    expect(of('2026-09-01T20:21:00Z')).toEqual({ say: 'Map data of 1 September 2026.', doubtful: false });
    expect(of('2026-05-27').doubtful).toBe(false);
  });

  it('older than six months is told to be old, to the day and over the turn of a year', () => {
    expect(of('2026-05-26').doubtful).toBe(true);
    expect(of('2024-12-31').say).toBe(
      'Map data of 31 December 2024, older than 6 months: newer limits are not on it.',
    );
    const inMarch = (dataDate: string) => sayMapAge([{ dataDate }], '2026-03-31T00:00:00Z').doubtful;
    expect(inMarch('2025-09-29')).toBe(true);
    expect(inMarch('2025-10-01')).toBe(false);
  });

  it('is the oldest file’s, and with one undated file, or with none, there is no date', () => {
    expect(of('2026-09-01', '2026-01-01').say).toMatch(/^Map data of 1 January 2026, older/);
    expect(of('2026-09-01', undefined).say).toMatch(/^Map data undated/);
    expect(of().doubtful).toBe(true);
    expect(of('yesterday').say).toMatch(/undated/);
  });
});
