import { describe, expect, it } from 'vitest';
import type { Route } from '../../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import { stripOf } from '../../../../geo/drive/strip/strip-of.ts';
import { stripSchema } from '../../../../main/contract/strip.ts';
import { openMap } from '../../../../main/services/map/open-map.ts';
import { readRouteFile } from '../../../../main/services/route/read-route-file.ts';
import { roadsFrom } from '../../../support/build-roads.ts';

/** Mill Lane runs north from a to d; at b a side road leaves to the east, at c a main road to the west. */
const NODES = {
  a: [50, 0],
  b: [50.002, 0],
  c: [50.004, 0],
  d: [50.006, 0],
  east: [50.002, 0.002],
  west: [50.004, -0.002],
} as const;
const map = roadsFrom({
  nodes: NODES,
  ways: [
    { id: 1, refs: ['a', 'b', 'c'], tags: { highway: 'unclassified', name: 'Mill Lane', width: '3' } },
    { id: 2, refs: ['c', 'd'], tags: { highway: 'unclassified', name: 'Mill Lane', width: '6' } },
    { id: 3, refs: ['b', 'east'], tags: { highway: 'residential' } },
    { id: 4, refs: ['c', 'west'], tags: { highway: 'primary' } },
  ],
});

function along(...names: (keyof typeof NODES)[]): Route {
  const lat = Float64Array.from(names, (name) => NODES[name][0]);
  const lon = Float64Array.from(names, (name) => NODES[name][1]);
  const timeMs = new Float64Array(names.length).fill(Number.NaN);
  return { name: '', kind: 'track', number: 1, segments: [{ lat, lon, timeMs }] };
}

const north = followRoads(along('a', 'b', 'c', 'd'), map);
const south = followRoads(along('d', 'c', 'b', 'a'), map);

/** Nowhere near a road of the map. */
const far: Route = {
  ...along('a', 'b'),
  segments: [
    {
      lat: Float64Array.of(51, 51.01),
      lon: Float64Array.of(1, 1),
      timeMs: Float64Array.of(Number.NaN, Number.NaN),
    },
  ],
};

describe('a drive unrolled', () => {
  it('tells on which side each road leaves', () => {
    const there = stripOf(north, map);
    expect(there.stubs.map(({ side, main }) => [side, main])).toEqual([
      ['right', false],
      ['left', true],
    ]);
    const back = stripOf(south, map);
    expect(back.stubs.map(({ side, main }) => [side, main])).toEqual([
      ['right', true],
      ['left', false],
    ]);
  });

  it('is as wide as the road is mapped, piece by piece and without holes', () => {
    const { pieces, lengthM } = stripOf(north, map);
    expect(pieces.map(({ widthM, name }) => [widthM, name])).toEqual([
      [3, 'Mill Lane'],
      [6, 'Mill Lane'],
    ]);
    expect(pieces[0]?.fromM).toBe(0);
    expect(pieces[1]?.fromM).toBeCloseTo(pieces[0]?.toM ?? 0, 6);
    expect(pieces[1]?.toM).toBeCloseTo(lengthM, 6);
  });

  it('has no side road where the same road goes on, nor for a path', () => {
    const plain = roadsFrom({
      nodes: NODES,
      ways: [
        { id: 1, refs: ['a', 'b'], tags: { highway: 'tertiary' } },
        { id: 2, refs: ['b', 'c', 'd'], tags: { highway: 'tertiary' } },
        { id: 3, refs: ['b', 'east'], tags: { highway: 'footway' } },
      ],
    });
    expect(stripOf(followRoads(along('a', 'b', 'c', 'd'), plain), plain).stubs).toEqual([]);
  });

  it('has the river to the right, houses to the left, and both sides wet where a canal passes under', () => {
    const near = {
      ...NODES,
      r1: [50.0001, 0.0004],
      r2: [50.0019, 0.0004],
      h1: [50.001, -0.0003],
      h2: [50.0011, -0.0003],
      h3: [50.0011, -0.0005],
      k1: [50.005, -0.0005],
      k2: [50.005, 0.0005],
    } as const;
    const wet = roadsFrom({
      nodes: near,
      ways: [
        { id: 1, refs: ['a', 'b', 'c', 'd'], tags: { highway: 'tertiary' } },
        { id: 2, refs: ['r1', 'r2'], tags: { waterway: 'river' } },
        { id: 3, refs: ['h1', 'h2', 'h3', 'h1'], tags: { building: 'house' } },
        { id: 4, refs: ['k1', 'k2'], tags: { waterway: 'canal' } },
      ],
    });
    const there = stripOf(followRoads(along('a', 'd'), wet), wet).beside;
    const told = (fromM: number, toM: number) =>
      there.filter((run) => run.fromM < toM && run.toM > fromM).map(({ side, kind }) => `${kind} ${side}`);
    expect(new Set(told(60, 200))).toEqual(new Set(['water right', 'building left']));
    expect(told(300, 400)).toEqual([]);
    expect(new Set(told(500, 620))).toEqual(new Set(['water right', 'water left']));
    const back = stripOf(followRoads(along('d', 'a'), wet), wet).beside;
    expect(
      back
        .filter(({ fromM }) => fromM > 400)
        .map(({ side, kind }) => `${kind} ${side}`)
        .toSorted(),
    ).toEqual(['building right', 'water left']);
  });

  it('tells names and numbers as one plain line, and the usual width where none is mapped', () => {
    const odd = roadsFrom({
      nodes: NODES,
      ways: [
        {
          id: 1,
          refs: ['a', 'b', 'c', 'd'],
          tags: { highway: 'secondary', name: 'Mill\u202e\nLane', ref: 'B 12' },
        },
      ],
    });
    const [piece] = stripOf(followRoads(along('a', 'd'), odd), odd, 'GB').pieces;
    expect(piece).toMatchObject({ name: 'Mill Lane', ref: 'B 12', kind: 'road', widthM: 6.2 });
  });

  it('has a piece, and no road, where the map has none', () => {
    const strip = stripOf(followRoads(far, map), map);
    expect(strip.pieces.map(({ kind }) => kind)).toEqual(['offMap']);
    expect(JSON.stringify(strip)).not.toContain('null');
  });

  it('of the sample passes its town, its low arch and its woods, and crosses to the page as it is', async () => {
    const file = await readRouteFile('sample-routes/drives/barred.gpx');
    const route = file.ok ? file.value.routes[0] : undefined;
    if (!route) throw new Error('the sample drive is gone');
    const opened = await openMap(['sample-routes/district.osm.pbf'], route, {});
    if (!opened.ok) throw new Error(opened.error.message);
    const strip = stripOf(followRoads(route, opened.value), opened.value, 'GB');
    expect(stripSchema.parse(JSON.parse(JSON.stringify(strip)))).toEqual(strip);
    expect(strip.towns.map(({ name }) => name)).toContain('Wenlowbridge');
    expect(strip.above.filter(({ rail, height }) => rail && height === '9\'6"')).toHaveLength(1);
    expect(strip.beside.some(({ kind }) => kind === 'wood')).toBe(true);
    for (const { fromM, toM } of strip.beside) expect(toM).toBeGreaterThan(fromM);
    expect(strip.beside.some(({ kind }) => kind === 'building')).toBe(true);
    expect(JSON.stringify(strip)).not.toContain('null');
    for (const lean of strip.lean) expect(Math.abs(lean)).toBeLessThanOrEqual(1);
  });
});
