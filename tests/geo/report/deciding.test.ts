import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decidingOf, scaleFigureOf, sumOf } from '../../../geo/report/deciding.ts';
import type { Finding } from '../../../geo/report/report.ts';

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

describe('what a finding turns on', () => {
  it('is the sum where a limit was held against the vehicle', () => {
    expect(decidingOf(finding(3, 3.05, -0.1), 'metric')).toMatchObject({
      kind: 'sum',
      sum: { short: '0.10 m' },
    });
  });

  it('is the text as mapped where the limit could not be counted with', () => {
    const { vehicle: _, spare: __, ...unread } = finding(0, 0, 0);
    expect(decidingOf({ ...unread, limit: { value: 0, unit: 'm', asMapped: 'low' } }, 'metric')).toEqual({
      kind: 'text',
      text: 'low',
    });
  });

  it('is a slope as it is driven, whichever way round its road is drawn', () => {
    const { vehicle: _, spare: __, ...slope } = finding(0, 0, 0);
    const said = (value: number) =>
      decidingOf({ ...slope, subject: 'slope', limit: { value, unit: '%', asMapped: '-11%' } }, 'metric');
    expect(said(11)).toEqual({ kind: 'text', text: '11 % up' });
    expect(said(-11)).toEqual({ kind: 'text', text: '11 % down' });
  });

  it('without a limit it is how far it reaches, a missing figure, or the place alone', () => {
    const { limit: _, vehicle: __, spare: ___, ...bare } = finding(0, 0, 0);
    expect(decidingOf({ ...bare, subject: 'slope', toM: 200 }, 'metric')).toEqual({
      kind: 'reach',
      lengthM: 200,
    });
    expect(decidingOf({ ...bare, toM: 20 }, 'metric')).toEqual({ kind: 'no figure' });
    expect(decidingOf({ ...bare, subject: 'barrier', toM: 20 }, 'metric')).toEqual({ kind: 'place' });
  });
});

describe('the drawing to scale', () => {
  it('stands a vehicle under a bridge at its height with the allowance, a tunnel likewise', () => {
    const low = finding(2.9, 3.05, -0.2);
    expect(scaleFigureOf(low)).toMatchObject({ kind: 'height', limitM: 2.9 });
    expect(scaleFigureOf({ ...low, subject: 'tunnel' })?.kind).toBe('height');
  });

  it('sets it between posts for a width and a barrier, along a line for a length', () => {
    const tight = finding(2.4, 2.3, 0.1);
    const drawn = (['width', 'barrier', 'length'] as const).map(
      (subject) => scaleFigureOf({ ...tight, subject })?.kind,
    );
    expect(drawn).toEqual(['width', 'width', 'length']);
  });

  it('puts it on a scale for a mass, one axle alone where that is what decides', () => {
    const heavy = finding(3000, 3500, -500, 'kg');
    expect(scaleFigureOf({ ...heavy, subject: 'mass' })).toEqual({
      kind: 'mass',
      limitKg: 3000,
      neededKg: 3500,
      axle: undefined,
    });
    const axle = { ...heavy, subject: 'axle' as const };
    expect(
      scaleFigureOf({ ...axle, vehicle: { value: 3500, unit: 'kg', what: 'axle plate', axle: 'front' } }),
    ).toMatchObject({ axle: 'front' });
  });

  it('is not there for a slope, nor for a limit of nothing', () => {
    expect(scaleFigureOf({ ...finding(2, 1, 1), subject: 'slope' })).toBeUndefined();
    expect(scaleFigureOf(finding(0, 3, -3))).toBeUndefined();
  });
});
