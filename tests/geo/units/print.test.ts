import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labelText } from '../../../geo/basemap/label-text.ts';
import {
  printApart,
  printBytes,
  printFeetInches,
  printKg,
  printKm,
  printLimitM,
  printLitres,
  printMetres,
  printMiles,
  printRun,
  printSizeM,
  printTonnes,
} from '../../../geo/units/print.ts';
import { readLength } from '../../../geo/units/read-length.ts';
import { letterOf } from '../../../geo/vehicle/form/fields.ts';
import { byName } from '../../../geo/yard/by-name.ts';

describe('a figure for the driver', () => {
  it('is rounded against the driver: limits down, the vehicle up', () => {
    expect(printLimitM(3.2)).toBe(`3.20 m (10'5")`);
    expect(printSizeM(3.2)).toBe(`3.20 m (10'6")`);
    expect(printLimitM(3.209)).toBe(`3.20 m (10'6")`);
    expect(printSizeM(3.201)).toBe(`3.21 m (10'7")`);
  });

  it('a limit that the vehicle just keeps does not look an inch too low', () => {
    expect(printLimitM(3)).toBe(`3.00 m (9'10")`);
    expect(printLimitM(3, 3)).toBe(`3.00 m (9'11")`);
    expect(printLimitM(3.01, 3)).toBe(`3.01 m (9'11")`);
    expect(printLimitM(3, 2.99)).toBe(`3.00 m (9'10")`);
    expect(printLimitM(3, 3.01)).toBe(`3.00 m (9'10")`);
    const metres = fc.double({ min: 1.5, max: 10, noNaN: true });
    const inches = (text: string) => {
      const [, feet, rest] = /\((\d+)'(\d+)"\)/.exec(text) ?? [];
      return Number(feet) * 12 + Number(rest);
    };
    fc.assert(
      fc.property(metres, metres, (limit, size) => {
        const [a, b] = [inches(printLimitM(limit, size)), inches(printSizeM(size))];
        expect(a >= b).toBe(size <= limit + 1e-6);
      }),
    );
  });

  it('is not moved by the noise of binary fractions', () => {
    expect(printSizeM(3.05 + 0.05)).toBe(`3.10 m (10'3")`);
    expect(printMetres(0.1 + 0.2, 'up')).toBe('0.30 m');
    expect(printFeetInches(150 * 0.0254, 'down')).toBe(`12'6"`);
    expect(printFeetInches(150 * 0.0254, 'up')).toBe(`12'6"`);
  });

  it('never flatters: a printed limit is at most the limit, a printed vehicle at least the vehicle', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 20, noNaN: true }), (m) => {
        const down = readLength(printFeetInches(m, 'down'));
        const up = readLength(printFeetInches(m, 'up'));
        if (down.kind !== 'value' || up.kind !== 'value') throw new Error('unread');
        expect(down.value).toBeLessThanOrEqual(m + 1e-6);
        expect(up.value).toBeGreaterThanOrEqual(m - 1e-6);
        expect(up.value - down.value).toBeLessThan(0.0255);
      }),
    );
  });

  it('gives twelve inches as a foot', () => {
    expect(printFeetInches(0.3047, 'up')).toBe(`1'0"`);
  });

  it('has masses in whole kilograms, or in tonnes with no more decimals than needed', () => {
    expect(printKg(3492.66, 'down')).toBe('3492 kg');
    expect(printKg(3492.66, 'up')).toBe('3493 kg');
    expect(printTonnes(3500)).toBe('3.5 t');
    expect(printTonnes(18_000)).toBe('18 t');
  });

  it('has distances in kilometres and miles, short ones in metres', () => {
    expect(printKm(12_340)).toBe('12.3 km');
    expect(printMiles(1609.344)).toBe('1.0 mi');
    expect(printRun(84)).toBe('80 m');
    expect(printRun(2)).toBe('10 m');
    expect(printRun(1250)).toBe('1.3 km');
  });
});

it('the size of a file is told in the unit that leaves three figures at the most', () => {
  expect([120, 181_000, 1_800_000, 93_000_000, 1_500_000_000].map(printBytes)).toEqual([
    '1 kB',
    '181 kB',
    '1.8 MB',
    '93 MB',
    '1.5 GB',
  ]);
});

describe('small things printed', () => {
  it('have one litre, a distance apart in metres below a kilometre, and letters of a drawing where there are any', () => {
    expect([printLitres(1), printLitres(2)]).toEqual(['1 litre', '2 litres']);
    expect([printApart(849.6), printApart(1200)]).toEqual(['850 m', '1.2 km']);
    expect([letterOf('rearClearanceM'), letterOf('gasKg')]).toEqual(['K', '']);
  });

  it('are in order by their names as people sort, and by id where those are alike', () => {
    const named = [
      { id: 'b', name: 'Day 10' },
      { id: 'a', name: 'day 2' },
      { id: 'd', name: 'Day 2' },
      { id: 'c', name: 'day 2' },
    ];
    expect(named.sort(byName).map(({ id }) => id)).toEqual(['a', 'c', 'd', 'b']);
  });

  it('of map names keep what can be drawn', () => {
    expect(labelText(undefined)).toBeUndefined();
    expect(labelText('\u202e \n')).toBeUndefined();
    expect(labelText(' Mill\u0007  Lane ')).toBe('Mill Lane');
  });
});
