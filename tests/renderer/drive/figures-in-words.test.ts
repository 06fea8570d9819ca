import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../geo/report/report.ts';
import {
  clockText,
  distanceText,
  durationText,
  sizeText,
  sumOf,
} from '../../../renderer/drive/figures-in-words.ts';

function finding(limit: number, vehicle: number, spare: number, unit: 'm' | 'kg' = 'm'): Finding {
  return {
    id: 'x',
    level: 'barred',
    subject: 'height',
    kind: 'limit',
    fromM: 0,
    toM: 0,
    at: { lat: 0, lon: 0 },
    osm: [],
    tags: {},
    limit: { value: limit, unit, asMapped: '' },
    vehicle: { value: vehicle, unit, what: 'height as measured' },
    spare,
    say: '',
    advice: '',
  };
}

describe('the sum that decides', () => {
  it('counts the measuring allowance into the vehicle: a 9\'6" bridge and a 3.05 m vehicle are 0.21 m apart', () => {
    const sum = sumOf(finding(2.8956, 3.05, -0.2044), 'metric');
    expect(sum).toMatchObject({
      limit: '2.89 m',
      vehicle: '3.10 m',
      spare: '−0.21 m',
      short: '0.21 m',
      over: true,
    });
    expect(sum?.what).toContain('with 0.05 m for measuring');
  });

  it('is told in feet and inches, and in both', () => {
    expect(sumOf(finding(2.8956, 3.05, -0.2044), 'imperial')?.limit).toBe(`9'6"`);
    expect(sumOf(finding(2.8956, 3.05, -0.2044), 'both')?.limit).toBe(`2.89 m (9'6")`);
  });

  it('feet of a limit that is just kept are those of the vehicle', () => {
    expect(sumOf(finding(3.1, 3.05, 0), 'both')).toMatchObject({
      limit: `3.10 m (10'3")`,
      vehicle: `3.10 m (10'3")`,
      spare: `0.00 m (0'0")`,
      over: false,
    });
  });

  it('never makes the spare larger, the limit higher or the vehicle smaller than it is', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.5, max: 10, noNaN: true }),
        fc.double({ min: 1.5, max: 5, noNaN: true }),
        (limit, vehicle) => {
          const sum = sumOf(finding(limit, vehicle, limit - vehicle), 'metric');
          const metres = (text = '') => Number(text.replace('−', '-').replace(' m', ''));
          expect(metres(sum?.limit)).toBeLessThanOrEqual(limit + 1e-6);
          expect(metres(sum?.vehicle)).toBeGreaterThanOrEqual(vehicle - 1e-6);
          expect(metres(sum?.spare)).toBeLessThanOrEqual(limit - vehicle + 1e-6);
        },
      ),
    );
  });

  it('is absent where no figure decides', () => {
    const { limit: _, ...bare } = finding(1, 1, 0);
    expect(sumOf(bare, 'metric')).toBeUndefined();
  });
});

describe('words for figures', () => {
  it.each([
    ['metric', '2.2 km'],
    ['imperial', '1.4 mi'],
    ['both', '2.2 km (1.4 mi)'],
  ] as const)('a distance in %s', (units, text) => expect(distanceText(2182, units)).toBe(text));

  it('a size is rounded as it is told to be', () => {
    expect([sizeText(3.201, 'up', 'metric'), sizeText(3.209, 'down', 'metric')]).toEqual([
      '3.21 m',
      '3.20 m',
    ]);
  });

  it('the clock carries its date only on another day', () => {
    expect(clockText('2027-06-12T09:33+01:00', '2027-06-12T09:30')).toBe('09:33');
    expect(clockText('2027-06-13T00:10+01:00', '2027-06-12T23:30')).toBe('2027-06-13 00:10');
  });

  it('a minute is the least', () => {
    expect([durationText(5), durationText(3900)]).toEqual(['1 min', '1 h 5 min']);
  });
});
