import { describe, expect, it } from 'vitest';
import type { Route } from '../../../../geo/drive/gpx/route.ts';
import { swapped } from '../../../../geo/drive/gpx/swapped.ts';
import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import { liesSwapped } from '../../../../main/services/route/lies-swapped.ts';
import { roadsFrom } from '../../../support/build-roads.ts';

const ROADS = roadsFrom({
  nodes: { a: [52.67, -0.73], b: [52.68, -0.73] },
  ways: [{ id: 1, refs: ['a', 'b'], tags: { highway: 'secondary' } }],
});

function along(lat: readonly number[], lon: readonly number[]): Route {
  const timeMs = new Float64Array(lat.length).fill(Number.NaN);
  const segments = [{ lat: Float64Array.from(lat), lon: Float64Array.from(lon), timeMs }];
  return { name: 'North', kind: 'track', number: 1, segments };
}

const NORTH = along([52.671, 52.675, 52.679], [-0.73, -0.73, -0.73]);
const lies = (route: Route) => liesSwapped({ route, drive: followRoads(route, ROADS) }, async () => ROADS);

describe('a drive whose latitude and longitude are the wrong way round', () => {
  it('is known by the roads that lie under it once they are swapped', async () => {
    const wrong = swapped(NORTH);
    expect(wrong && (await lies(wrong))).toBe(true);
  });

  it('is none that lies on the map as it is, or on no map either way', async () => {
    expect(await lies(NORTH)).toBe(false);
    expect(await lies(along([10, 10.01], [20, 20]))).toBe(false);
    expect(await lies(along([10, 10.01], [120, 120]))).toBe(false);
  });
});
