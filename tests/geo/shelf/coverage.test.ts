import { describe, expect, it } from 'vitest';
import { localFrame } from '../../../geo/earth/frame.ts';
import { coverageOf } from '../../../geo/shelf/coverage.ts';
import { roadsFrom } from '../../support/build-roads.ts';

const frame = localFrame(54, 9);
const at = (eastM: number, northM = 0): readonly [number, number] => [
  54 + northM / frame.metresPerDegLat,
  9 + eastM / frame.metresPerDegLon,
];

/** A road eastwards from 0 to 4 km, and one from 6 to 10 km. */
const roads = roadsFrom({
  nodes: { a: at(0), b: at(4_000), c: at(6_000), d: at(10_000) },
  ways: [
    { id: 1, refs: ['a', 'b'] },
    { id: 2, refs: ['c', 'd'] },
  ],
});

const line = (...places: readonly (readonly [number, number])[]) => ({
  segments: [
    { lat: Float64Array.from(places, ([lat]) => lat), lon: Float64Array.from(places, ([, lon]) => lon) },
  ],
});
const every100M = (fromM: number, toM: number, northM = 0) =>
  Array.from({ length: (toM - fromM) / 100 + 1 }, (_, i) => at(fromM + 100 * i, northM));

describe('a map covers a drive', () => {
  it('where a road lies within 100 m of the line', () => {
    expect(coverageOf(line(...every100M(0, 4_000, 80)), roads).bare).toEqual([]);
    expect(coverageOf(line(...every100M(0, 4_000, 130)), roads).bare).toHaveLength(1);
  });

  it('not over a stretch of more than a kilometre without one, told in metres', () => {
    const { bare, lengthM } = coverageOf(line(...every100M(0, 10_000)), roads);
    expect(lengthM).toBeCloseTo(10_000, -1);
    expect(bare).toHaveLength(1);
    expect(bare[0]!.fromM).toBeGreaterThan(4_000);
    expect(bare[0]!.fromM).toBeLessThan(4_250);
    expect(bare[0]!.toM).toBeGreaterThan(5_800);
    expect(bare[0]!.toM).toBeLessThan(6_000);
  });

  it('where the stretch without one is shorter than that', () => {
    expect(coverageOf(line(...every100M(3_000, 4_900)), roads).bare).toEqual([]);
  });

  it('between points far apart, although the road swings out', () => {
    expect(coverageOf(line(at(500, 0), at(3_500, 500)), roads).bare).toEqual([]);
  });

  it('not where it has nothing at all', () => {
    const none = roadsFrom({ nodes: {}, ways: [] });
    const { bare, lengthM } = coverageOf(line(...every100M(0, 3_000)), none);
    expect(bare).toEqual([{ fromM: 0, toM: lengthM }]);
  });
});
