import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decidingOf, scaleFigureOf, sumOf } from '../../../geo/report/deciding.ts';
import type { Finding } from '../../../geo/report/report.ts';
import { sayTurnFigures } from '../../../geo/report/say-turn-figures.ts';
import { spareUnit, tightestOf } from '../../../geo/report/tightest.ts';
import type { Turn } from '../../../geo/report/turn.ts';
import { drawnSizeIn, wayIn } from '../../../geo/units/in-units.ts';

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

describe('other units and other figures', () => {
  it('degrees and per cent are rounded against the driver, to a tenth', () => {
    const of = (limit: number, spare: number, unit: 'deg' | '%') =>
      sumOf(
        { ...finding(limit, limit - spare, spare), limit: { value: limit, unit, asMapped: '' } },
        'metric',
      );
    expect(of(8.26, 1.04, 'deg')).toMatchObject({ limit: '8.2°', vehicle: '7.3°', spare: '1°', short: '1°' });
    expect(of(8, -0.55, '%')).toMatchObject({
      limit: '8 %',
      vehicle: '8.6 %',
      spare: '−0.6 %',
      short: '0.6 %',
      over: true,
    });
  });

  it('kilograms name the allowance that they are held with', () => {
    const sum = sumOf({ ...finding(3500, 3450, 30, 'kg'), subject: 'mass' }, 'metric');
    expect(sum).toMatchObject({ limit: '3500 kg', vehicle: '3470 kg', spare: '30 kg' });
    expect(sum?.what).toBe('height as measured 3450 kg, with 20 kg for measuring');
  });

  it('no drawing is made of a slope, which is neither a size nor a mass', () => {
    expect(
      scaleFigureOf({ ...finding(12, 10, 2), limit: { value: 12, unit: '%', asMapped: '' } }),
    ).toBeUndefined();
  });

  it('the tightest of a report is the least against its limit, and its unit is its limit’s', () => {
    const wide = { ...finding(3, 2.5, 0.5), id: 'wide', level: 'tight' as const };
    const high = { ...finding(10, 9.4, 0.6), id: 'high', level: 'tight' as const };
    const folded = { ...finding(3, 3, 0), id: 'folded', level: 'tight' as const, folded: true as const };
    expect(tightestOf([wide, high, folded])?.id).toBe('high');
    const { limit: _, ...unlimited } = wide;
    expect(tightestOf([unlimited, high])?.id).toBe('high');
    expect(tightestOf([folded])).toBeUndefined();
    expect(spareUnit(wide)).toBe('m');
    expect(spareUnit(unlimited)).toBe('m');
    expect(spareUnit({ ...unlimited, vehicle: undefined })).toBe('m');
    expect(spareUnit({ ...unlimited, vehicle: { value: 3500, unit: 'kg', what: 'x' } })).toBe('kg');
  });
});

describe('a size where there is room for one unit', () => {
  it('is in feet and inches where those were chosen, else in metres', () => {
    expect(drawnSizeIn('imperial', 3.2, 'down')).toBe(`10'5"`);
    expect([drawnSizeIn('both', 3.2, 'down'), drawnSizeIn('metric', 3.2, 'down')]).toEqual([
      '3.20 m',
      '3.20 m',
    ]);
    expect([wayIn('metric', 3.4), wayIn('metric', 13.42)]).toEqual(['3.40 m', '13.4 m']);
  });
});

describe('what was assumed of a turn, and its figures', () => {
  const turn = {
    swing: {
      planM: 0.21,
      planFromM: 0.2,
      planToM: 0.31,
      gentleM: 0.01,
      worstM: 0.46,
      worstFromM: 0.46,
      worstToM: 0.46,
    },
    start: { gapM: 0.46, overM: 0 },
    lockFrom: 'measured',
  } as unknown as Turn;
  it('are rounded against the driver, one unit said once, and both where both are wanted', () => {
    expect(sayTurnFigures(turn, 'metric')).toEqual({
      plan: '21 cm (20 to 31 cm)',
      gently: 'hardly at all',
      worst: '46 cm, full lock as measured in the yard',
      gap: '46 cm',
    });
    expect(sayTurnFigures(turn, 'both').plan).toBe('21 cm (9 in) (20 cm (7 in) to 31 cm (13 in))');
  });
});
