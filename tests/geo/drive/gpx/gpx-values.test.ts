import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { printTime, readTimeMs } from '../../../../geo/drive/gpx/gpx-values.ts';
import { plainLine, quote } from '../../../../geo/units/text.ts';

describe('times in GPX', () => {
  it.each([
    ['2026-05-01T10:00:00Z', Date.UTC(2026, 4, 1, 10)],
    [' 2026-05-01T10:00:00.250Z\n', Date.UTC(2026, 4, 1, 10, 0, 0, 250)],
    ['2026-05-01T10:00:00', Date.UTC(2026, 4, 1, 10)],
    ['2026-05-01T10:00:00+02:00', Date.UTC(2026, 4, 1, 8)],
    ['2026-05-01T10:00:00-0330', Date.UTC(2026, 4, 1, 13, 30)],
    ['2024-02-29T24:00:00Z', Date.UTC(2024, 2, 1)],
    ['2000-02-29T00:00:00Z', Date.UTC(2000, 1, 29)],
    ['1970-01-01T00:00:00Z', 0],
  ])('%s', (text, expected) => {
    expect(readTimeMs(text)).toBe(expected);
  });

  it.each([
    '',
    'yesterday',
    '2026-05-01',
    '2026-13-01T00:00:00Z',
    '2026-02-29T00:00:00Z',
    '1900-02-29T00:00:00Z',
    '2026-05-01T25:00:00Z',
    '2026-05-01T10:60:00Z',
    '2026-05-01T10:00:00+99:00',
    '2026-00-10T00:00:00Z',
  ])('"%s" is unreadable', (text) => {
    expect(readTimeMs(text)).toBeNaN();
  });

  it('are printed as they were read, and as the language prints them', () => {
    const day = 86_400_000;
    fc.assert(
      fc.property(fc.integer({ min: -719_000 * day, max: 2_900_000 * day }), (ms) => {
        expect(printTime(ms)).toBe(new Date(ms).toISOString());
        expect(readTimeMs(printTime(ms))).toBe(ms);
      }),
    );
  });
});

describe('names', () => {
  it('become one plain line', () => {
    expect(plainLine(' a\u0000\u001b[31m\u0085\u2028b\r\n')).toBe('a··[31m b');
  });

  it('are quoted shortly, never inside a letter', () => {
    expect(quote('😀'.repeat(100))).toBe(`"${'😀'.repeat(59)}…"`);
    expect(quote('x'.repeat(60))).toBe(`"${'x'.repeat(60)}"`);
  });
});
