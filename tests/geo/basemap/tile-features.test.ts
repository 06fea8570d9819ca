import { describe, expect, it } from 'vitest';
import { DRAW_KINDS, type DrawKind, TILE_UNITS, type TileFeatures } from '../../../geo/basemap/features.ts';
import { prepareBaseMap } from '../../../geo/basemap/prepare.ts';
import { tileFeatures } from '../../../geo/basemap/tile-features.ts';
import { mercatorX, mercatorY } from '../../../geo/earth/mercator.ts';
import type { Tags } from '../../../geo/roads/roads.ts';
import { type MapSketch, roadsFrom } from '../../support/build-roads.ts';

/** Ways near 50° N 1° W, positions in thousandths of a degree east and north of there. */
function mapOf(
  ways: readonly { readonly line: readonly (readonly [number, number])[]; readonly tags: Tags }[],
  places: Readonly<Record<string, Tags>> = {},
) {
  const nodes: Record<string, readonly [number, number]> = {};
  const nameOf = (x: number, y: number) => {
    const name = `${x},${y}`;
    nodes[name] = [50 + y / 1000, -1 + x / 1000];
    return name;
  };
  const sketch: MapSketch = {
    nodes,
    ways: ways.map(({ line, tags }, i) => ({ id: i + 1, refs: line.map(([x, y]) => nameOf(x, y)), tags })),
  };
  for (const place in places) {
    const [x, y] = place.split(',').map(Number);
    nameOf(x ?? 0, y ?? 0);
  }
  return prepareBaseMap(roadsFrom({ ...sketch, nodeTags: places }));
}

/** The tile about 50° N 1° W. */
function tileOf(map: ReturnType<typeof mapOf>, z: number): TileFeatures {
  return tileFeatures(map, z, Math.floor(mercatorX(-0.999) * 2 ** z), Math.floor(mercatorY(50.001) * 2 ** z));
}

const kinds = (tile: TileFeatures): DrawKind[] => tile.layers.map(({ kind }) => kind);

const ROAD = [
  [0, 0],
  [4, 1],
  [8, 8],
] as const;
const SQUARE = [
  [0, 0],
  [6, 0],
  [6, 6],
  [0, 6],
  [0, 0],
] as const;

describe('a tile of the base map', () => {
  it('is empty where nothing lies', () => {
    const map = mapOf([{ line: ROAD, tags: { highway: 'primary' } }]);
    expect(tileFeatures(map, 14, 0, 0)).toMatchObject({ layers: [], labels: [], sea: false });
    expect(tileFeatures(prepareBaseMap(roadsFrom({ nodes: {}, ways: [] })), 3, 1, 1).layers).toEqual([]);
  });

  it('holds a road in whole units about its square', () => {
    const tile = tileOf(mapOf([{ line: ROAD, tags: { highway: 'primary' } }]), 13);
    expect(kinds(tile)).toEqual(['primary']);
    for (const { parts } of tile.layers)
      for (const value of parts) {
        expect(Number.isInteger(value)).toBe(true);
        expect(Math.abs(value)).toBeLessThan(TILE_UNITS * 2);
      }
  });

  it('lays areas under lines, lines under roads, tunnels under and bridges over the ground', () => {
    const tile = tileOf(
      mapOf([
        { line: ROAD, tags: { highway: 'primary', bridge: 'yes', layer: '1' } },
        { line: ROAD, tags: { highway: 'trunk', tunnel: 'yes', layer: '-1' } },
        { line: ROAD, tags: { highway: 'residential' } },
        { line: ROAD, tags: { railway: 'rail' } },
        { line: ROAD, tags: { waterway: 'river' } },
        { line: SQUARE, tags: { natural: 'water' } },
        { line: SQUARE, tags: { natural: 'wood' } },
      ]),
      14,
    );
    expect(tile.layers.map(({ kind, level }) => `${kind} ${level}`)).toEqual([
      'trunk -1',
      'wood 0',
      'water 0',
      'river 0',
      'minor 0',
      'rail 0',
      'primary 1',
    ]);
    const order = tile.layers.map(({ kind, level }) => level * 100 + DRAW_KINDS.indexOf(kind));
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('shows main roads from afar and houses only from near', () => {
    const map = mapOf([
      { line: ROAD, tags: { highway: 'motorway' } },
      { line: ROAD, tags: { highway: 'residential' } },
      { line: SQUARE, tags: { building: 'yes' } },
    ]);
    expect(kinds(tileOf(map, 7))).toEqual(['motorway']);
    expect(kinds(tileOf(map, 12))).toEqual(['minor', 'motorway']);
    expect(kinds(tileOf(map, 15))).toEqual(['building', 'minor', 'motorway']);
  });

  it('leaves out what a zoom does not show', () => {
    const line = Array.from({ length: 200 }, (_, i) => [i / 20, i % 2 === 0 ? 1 : 1.01] as const);
    const map = mapOf([{ line, tags: { highway: 'primary' } }]);
    const partsAt = (z: number) => tileOf(map, z).layers[0]?.parts.length ?? 0;
    expect(partsAt(10)).toBeLessThan(12);
    expect(partsAt(18)).toBeGreaterThan(partsAt(10));
  });

  it('joins the edges of one area that share its tags, and leaves one that does not close', () => {
    const lake = { type: 'multipolygon', natural: 'water' };
    const cut = { type: 'multipolygon', natural: 'wood' };
    const tile = tileOf(
      mapOf([
        { line: SQUARE.slice(0, 3), tags: lake },
        { line: SQUARE.slice(2), tags: lake },
        { line: SQUARE.slice(0, 3), tags: cut },
      ]),
      13,
    );
    expect(kinds(tile)).toEqual(['water']);
  });

  it('lies at sea only where every coastline closes', () => {
    const coast = { natural: 'coastline' };
    expect(tileOf(mapOf([{ line: SQUARE, tags: coast }]), 13)).toMatchObject({
      sea: true,
      layers: [{ kind: 'land' }, { kind: 'coastline' }],
    });
    expect(tileOf(mapOf([{ line: SQUARE.slice(0, 4), tags: coast }]), 13)).toMatchObject({
      sea: false,
      layers: [{ kind: 'coastline' }],
    });
  });

  it('lies at sea about its coasts, and not on another continent', () => {
    const island = mapOf([{ line: SQUARE, tags: { natural: 'coastline' } }]);
    expect(tileFeatures(island, 13, 0, 0).sea).toBe(false);
  });

  it('is the same each time it is cut', () => {
    const make = () =>
      mapOf(
        [
          { line: ROAD, tags: { highway: 'primary', name: 'Weir Lane', ref: 'A9' } },
          { line: SQUARE, tags: { building: 'yes' } },
        ],
        { '3,3': { place: 'village', name: 'Weir' } },
      );
    expect(tileOf(make(), 15)).toEqual(tileOf(make(), 15));
    const twice = make();
    expect(tileOf(twice, 15)).toEqual(tileOf(twice, 15));
  });
});

describe('texts of the base map', () => {
  const all = (map: ReturnType<typeof mapOf>, z: number) => {
    const x = Math.floor(mercatorX(-0.999) * 2 ** z);
    const y = Math.floor(mercatorY(50.001) * 2 ** z);
    return [-2, -1, 0, 1, 2].flatMap((dx) =>
      [-2, -1, 0, 1, 2].flatMap((dy) => tileFeatures(map, z, x + dx, y + dy).labels),
    );
  };

  it('a village stands in one tile only', () => {
    const map = mapOf([], { '3,3': { place: 'village', name: 'Weir' } });
    for (const z of [10, 13, 16])
      expect(all(map, z)).toMatchObject([{ say: 'Weir', kind: 'village', angleDeg: 0 }]);
  });

  it("a road's name is written along it, once for all ways that bear it, and read from left to right", () => {
    const tags = { highway: 'secondary', name: 'Weir Lane' };
    const map = mapOf([
      {
        line: [
          [4, 1],
          [0, 0],
        ],
        tags,
      },
      {
        line: [
          [4, 1],
          [8, 2],
        ],
        tags,
      },
    ]);
    const labels = all(map, 14).filter(({ kind }) => kind === 'road');
    expect(labels.length).toBeGreaterThan(0);
    for (const { say, angleDeg } of labels) {
      expect(say).toBe('Weir Lane');
      expect(angleDeg).toBeLessThan(0);
      expect(angleDeg).toBeGreaterThan(-45);
    }
    expect(new Set(labels.map(({ x, y }) => `${x} ${y}`)).size).toBe(labels.length);
  });

  const lane = (line: readonly (readonly [number, number])[], name = 'Weir Lane') =>
    mapOf([{ line, tags: { highway: 'secondary', name } }]);
  const said = (map: ReturnType<typeof mapOf>, z: number) => all(map, z).map(({ say }) => say);

  it("a road's name waits for a zoom at which the road is long enough for it", () => {
    const short = lane([
      [0, 0],
      [0.6, 0],
    ]);
    expect([said(short, 13), said(short, 17)]).toEqual([[], ['Weir Lane']]);
    const long = lane([
      [0, 0],
      [40, 0],
    ]);
    expect([said(long, 10), said(long, 13).length > 0]).toEqual([[], true]);
  });

  it('a road that winds bears its name where it is straight, and none where it never is', () => {
    const zigzag = Array.from({ length: 60 }, (_, i) => [i * 0.1, i % 2] as const);
    expect(said(lane(zigzag), 15)).toEqual([]);
    expect(said(lane([...zigzag, [30, 0]]), 15)).toContain('Weir Lane');
  });

  it('a road to the west and south bears its name from left to right', () => {
    const [label] = all(
      lane([
        [8, 6],
        [2, 2],
      ]),
      15,
    );
    expect(Math.abs(label?.angleDeg ?? 99)).toBeLessThanOrEqual(90);
    const [other] = all(
      lane([
        [8, 2],
        [2, 6],
      ]),
      15,
    );
    expect(Math.abs(other?.angleDeg ?? 99)).toBeLessThanOrEqual(90);
  });

  it("a river's name is written along it, whichever way its pieces run", () => {
    const piece = (...line: readonly (readonly [number, number])[]) => ({
      line,
      tags: { waterway: 'river', name: 'Lea' },
    });
    const map = mapOf([piece([4, 0], [0, 0]), piece([8, 0], [4, 0]), piece([8, 0], [12, 0])]);
    const labels = all(map, 13);
    expect(labels.length).toBeGreaterThan(0);
    for (const label of labels) expect(label).toMatchObject({ say: 'Lea', kind: 'water' });
  });

  it('a lake takes a name that its width has room for', () => {
    const map = mapOf([{ line: SQUARE, tags: { natural: 'water', name: 'Great Mere' } }]);
    expect([said(map, 11), said(map, 16)]).toEqual([[], ['Great Mere']]);
  });

  it('a name that is markup, turns text round or has no end is one short plain line', () => {
    const names = ['<img src=x onerror=alert(1)>', 'We\u202eir\u0000\nLane', 'x'.repeat(10_000)];
    const map = mapOf([], Object.fromEntries(names.map((name, i) => [`${i},3`, { place: 'village', name }])));
    const said = all(map, 13).map(({ say }) => say);
    expect(said).toContain('<img src=x onerror=alert(1)>');
    expect(said).toContain('We ir Lane');
    expect(said).toContain(`${'x'.repeat(59)}…`);
  });
});
