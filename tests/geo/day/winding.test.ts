import { describe, expect, it } from 'vitest';
import { sayWinding } from '../../../geo/day/say-winding.ts';
import { windingStretches } from '../../../geo/day/winding.ts';
import { wayAlong } from '../../../geo/graph/road-graph.ts';
import type { Tags } from '../../../geo/roads/roads.ts';
import { roadsFrom } from '../../support/build-roads.ts';

/** A road of so many kilometres that swings to and fro by an angle every 100 m between two kilometres. */
function winding(
  km: number,
  swing: { fromKm: number; toKm: number; deg: number },
  tags: Tags = {},
  heightOf?: (m: number) => number,
) {
  const nodes: Record<string, [number, number]> = {};
  let [lat, lon] = [47, 9];
  for (let i = 0; i <= km * 10; i++) {
    nodes[`n${i}`] = [lat, lon];
    const bends = i >= swing.fromKm * 10 && i < swing.toKm * 10;
    const angle = bends ? ((i % 2 === 0 ? 1 : -1) * swing.deg * Math.PI) / 360 : 0;
    lat += (100 * Math.sin(angle)) / 111_195;
    lon += (100 * Math.cos(angle)) / (111_195 * Math.cos((47 * Math.PI) / 180));
  }
  const roads = roadsFrom({
    nodes,
    ways: [{ id: 1, refs: Object.keys(nodes), tags: { highway: 'tertiary', ...tags } }],
  });
  const lengthM = wayAlong(roads, 0).at(-1) ?? 0;
  const leg = { kind: 'stretch' as const, way: 0, forward: true, alongFromM: 0, alongToM: lengthM };
  const drive = {
    lengthM,
    legs: [{ ...leg, fromM: 0, toM: lengthM }],
    guessed: [],
    doubtful: [],
    brokenTurns: [],
  };
  const places = Object.values(nodes);
  const line = heightOf && [
    {
      lat: Float64Array.from(places, ([each]) => each),
      lon: Float64Array.from(places, ([, each]) => each),
      elevationM: Float64Array.from(places, (_, i) => heightOf(i * 100)),
    },
  ];
  return windingStretches(drive, roads, line);
}

describe('a long winding stretch', () => {
  it('is measured by its turns on each kilometre', () => {
    // ten bends of 40° on each kilometre
    const [one, ...more] = winding(12, { fromKm: 3, toKm: 9, deg: 40 });
    expect(more).toEqual([]);
    expect(one?.fromM).toBe(3000);
    expect(one?.toM).toBe(9000);
    expect(one?.turnDegPerKm).toBeGreaterThan(370);
    expect(one?.turnDegPerKm).toBeLessThan(401);
    expect(one).not.toHaveProperty('steepestPercent');
  });

  it('is none on a straight road, on gentle bends, or where it soon ends', () => {
    expect(winding(12, { fromKm: 0, toKm: 0, deg: 0 })).toEqual([]);
    expect(winding(12, { fromKm: 0, toKm: 12, deg: 10 })).toEqual([]);
    expect(winding(12, { fromKm: 3, toKm: 6, deg: 40 })).toEqual([]);
  });

  it('is half as long on slopes that are mapped steep', () => {
    expect(winding(12, { fromKm: 3, toKm: 6, deg: 40 }, { incline: '-12%' })[0]?.steepestPercent).toBe(12);
    expect(winding(12, { fromKm: 3, toKm: 6, deg: 40 }, { incline: '3%' })).toEqual([]);
  });

  const hill = { fromKm: 3, toKm: 6, deg: 40 };
  /** One in ten from 4 km to 5 km. */
  const climb = (m: number) => 400 + 0.1 * Math.max(0, Math.min(m, 5000) - 4000);

  it('is half as long, where none is mapped, on slopes that the heights in the drive’s file tell', () => {
    const [one] = winding(12, hill, {}, climb);
    expect(one).toMatchObject({ fromM: 3000, toM: 6000, slopesFrom: 'file' });
    expect(one?.steepestPercent).toBeGreaterThan(8.5);
    expect(one?.steepestPercent).toBeLessThan(11);
    expect(sayWinding(one!, 'metric')).toContain('by the heights in the drive’s file, smoothed over 400 m');
    // what is mapped goes before it
    expect(winding(12, hill, { incline: '3%' }, climb)).toEqual([]);
  });

  it('is not made hilly by a receiver’s errors, a spike, or heights that are mostly missing', () => {
    const noise = (m: number) => 400 + 5 * Math.sin(m / 37) + (m === 4500 ? 90 : 0);
    expect(winding(12, hill, {}, noise)).toEqual([]);
    expect(winding(12, hill, {}, (m) => (m % 1000 === 0 ? climb(m) : Number.NaN))).toEqual([]);
  });
});
