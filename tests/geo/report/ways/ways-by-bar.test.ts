import { describe, expect, it } from 'vitest';
import type { WayRound } from '../../../../geo/report/way-round.ts';
import { costTogether, driveTogether, waysByBar } from '../../../../geo/report/ways/ways-by-bar.ts';

const way = (findingIds: string[], fromM: number, toM: number) =>
  ({ findingIds, fromM, toM, extraM: 100, extraS: 60 }) as unknown as WayRound;

describe('ways past several bars', () => {
  const ways = [
    way(['bridge'], 1000, 2000),
    way(['bridge'], 900, 2100),
    way(['posts', 'weight'], 5000, 8000),
    way(['weight', 'posts'], 4000, 8000),
  ];

  it('are gathered by what they pass, each with its place in the list', () => {
    expect(
      waysByBar(ways).map(({ findingIds, ways: them }) => [findingIds, them.map(({ index }) => index)]),
    ).toEqual([
      [['bridge'], [0, 1]],
      [
        ['posts', 'weight'],
        [2, 3],
      ],
    ]);
  });

  it('are driven together by the first past each', () => {
    expect(driveTogether(ways)).toEqual([0, 2]);
    expect(costTogether([ways[0]!, ways[2]!])).toEqual({ extraM: 200, extraS: 120 });
  });

  it('are never driven together where they need the same stretch of the drive', () => {
    expect(
      driveTogether([way(['bridge'], 1000, 4000), way(['posts'], 3000, 5000), way(['posts'], 4000, 5000)]),
    ).toEqual([0, 2]);
  });

  it('pass nothing twice', () => {
    expect(driveTogether([way(['bridge', 'posts'], 1000, 4000), way(['posts'], 5000, 6000)])).toEqual([0]);
  });
});
