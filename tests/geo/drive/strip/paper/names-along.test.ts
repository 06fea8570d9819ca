import { describe, expect, it } from 'vitest';
import { namedStretches, nameYs } from '../../../../../geo/drive/strip/paper/names-along.ts';

describe('names along the road', () => {
  it('writes a name only where there is room, clear of heights and towns', () => {
    expect(nameYs(0, 50, 60, [])).toEqual([]);
    expect(nameYs(0, 100, 60, [])).toEqual([50]);
    expect(nameYs(0, 100, 60, [50])).toEqual([]);
    for (const y of nameYs(0, 2000, 60, [233, 700])) {
      expect(Math.abs(y - 233)).toBeGreaterThan(30);
      expect(Math.abs(y - 700)).toBeGreaterThan(30);
    }
  });

  it('stand once for pieces of one name, the fullest text first; a nameless piece parts them', () => {
    const piece = (fromM: number, name?: string) => ({
      fromM,
      toM: fromM + 10,
      widthM: 5,
      kind: 'road' as const,
      ...(name === undefined ? {} : { name, ref: 'B 12' }),
    });
    const pieces = [piece(0, 'Mill Lane'), piece(10, 'Mill Lane'), piece(20), piece(30, 'Mill Lane')];
    expect(namedStretches(pieces)).toEqual([
      { texts: ['Mill Lane B 12', 'Mill Lane', 'B 12'], fromM: 0, toM: 20 },
      { texts: ['Mill Lane B 12', 'Mill Lane', 'B 12'], fromM: 30, toM: 40 },
    ]);
  });
});
