import { afterEach, expect, it, vi } from 'vitest';
import type { Route } from '../../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import { mapOf } from './sketch.ts';

afterEach(() => vi.restoreAllMocks());

it('touching segments are joined in work that grows with their number, not with its square', () => {
  const segments = Array.from({ length: 2000 }, (_, i) => ({
    lat: Float64Array.of(53 + i * 1e-4, 53 + (i + 1) * 1e-4),
    lon: Float64Array.of(8, 8),
    timeMs: Float64Array.of(Number.NaN, Number.NaN),
  }));
  const route: Route = { name: '', kind: 'track', number: 1, segments };
  const set = vi.spyOn(Float64Array.prototype, 'set');
  const drive = followRoads(route, mapOf({ a: [0, 0], b: [100, 0] }, [{ id: 1, refs: ['a', 'b'] }]));
  const copied = set.mock.calls.reduce((sum, [values]) => sum + values.length, 0);
  expect(drive.legs.filter(({ kind }) => kind === 'gap')).toEqual([]);
  // three numbers a position, each moved once
  expect(copied).toBeLessThanOrEqual(3 * 2 * 2000);
});
