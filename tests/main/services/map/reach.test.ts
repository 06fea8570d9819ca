import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Route } from '../../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import { corridorMask } from '../../../../geo/roads/mask.ts';
import { type Roads, WAY_KIND } from '../../../../geo/roads/roads.ts';
import { openMap } from '../../../../main/services/map/open-map.ts';
import { type PbfBlock, pbfFile } from '../../../support/pbf-file.ts';
import { scratchFiles, worked } from '../../../support/scratch-files.ts';

const write = scratchFiles();
let files = 0;
const fileOf = (blocks: readonly PbfBlock[]) => write(`reach-${files++}.osm.pbf`, pbfFile(blocks));

function routeAlong(places: readonly (readonly [number, number])[]): Route {
  const lat = Float64Array.from(places, ([value]) => value);
  const lon = Float64Array.from(places, ([, value]) => value);
  const timeMs = new Float64Array(places.length).fill(Number.NaN);
  return { name: '', kind: 'track', number: 1, segments: [{ lat, lon, timeMs }] };
}

const refsOf = (roads: Roads, way: number) =>
  Array.from(
    roads.ways.refs.subarray(roads.ways.start[way], roads.ways.start[way + 1]),
    (node) => roads.nodes.id[node],
  );

/** A road along 50° N: node k lies at 7 + k · 0.05°, 3.6 km apart. */
const nodes = Array.from({ length: 60 }, (_, k) => ({ id: 100 + k, lat: 50, lon: 7 + k * 0.05 }));
const tags = { highway: 'primary' };
const short = routeAlong([
  [50, 7.1],
  [50, 7.12],
]);

describe('the corridor about a drive', () => {
  it('keeps a road it touches whole, its far nodes fetched by a pass of their own', async () => {
    const far = { id: 900, lat: 60, lon: 20, tags: { highway: 'crossing' } };
    const path = fileOf([
      { nodes: [...nodes, far] },
      { ways: [{ id: 1, refs: [102, 103, 140, 900], tags }] },
    ]);
    const roads = worked(await openMap([path], short));
    expect(refsOf(roads, 0)).toEqual([102, 103, 140, 900]);
    expect(roads.notes).toEqual([]);
    expect([...roads.nodes.tags.values()]).toEqual([{ highway: 'crossing' }]);
  });

  it('leaves out roads elsewhere', async () => {
    const path = fileOf([
      { nodes },
      {
        ways: [
          { id: 1, refs: [102, 103], tags },
          { id: 2, refs: [150, 151], tags },
        ],
      },
    ]);
    expect([...worked(await openMap([path], short)).ways.id]).toEqual([1]);
  });

  it('keeps a segment of any length that the drive enters or leaves by one of its ends', async () => {
    // nodes 10 and 35 are 90 km apart
    const path = fileOf([
      { nodes },
      {
        ways: [
          { id: 1, refs: [110, 135], tags },
          { id: 2, refs: [135, 136], tags },
        ],
      },
    ]);
    const along = (from: number, to: number) =>
      routeAlong(Array.from({ length: 200 }, (_, i) => [50, from + ((to - from) * i) / 199] as const));
    for (const [from, to] of [
      [7.5, 8.8],
      [8.2, 8.8],
      [8, 7.5],
    ] as const)
      expect([...worked(await openMap([path], along(from, to))).ways.id]).toContain(1);
    // begun and ended within it, far from both ends: not kept, and so told as off the map
    const inside = worked(await openMap([path], along(8, 8.1)));
    expect([...inside.ways.id]).toEqual([]);
    expect(followRoads(along(8, 8.1), inside).legs.map(({ kind }) => kind)).toEqual(['offMap']);
  });

  it('keeps a zone that encloses the drive however far off its edge is', async () => {
    const zone = { boundary: 'low_emission_zone', type: 'boundary' };
    const path = fileOf([{ nodes }, { ways: [{ id: 2, refs: [150, 151, 159, 150], tags: zone }] }]);
    const roads = worked(await openMap([path], short));
    expect(refsOf(roads, 0)).toEqual([150, 151, 159, 150]);
  });

  describe('of a zone drawn as a relation', () => {
    const zone = {
      id: 7,
      members: [
        { type: 'way', id: 2, role: 'outer' },
        { type: 'way', id: 3, role: 'outer' },
      ],
      tags: { type: 'boundary', boundary: 'low_emission_zone' },
    } as const;
    const edges = {
      ways: [
        { id: 2, refs: [140, 150] },
        { id: 3, refs: [150, 159, 140], tags: { highway: 'primary' } },
      ],
    };

    it('keeps all edges however far off, as edges alone', async () => {
      for (const blocks of [
        [{ nodes }, edges, { relations: [zone] }],
        [{ relations: [zone] }, edges, { nodes }],
      ]) {
        const roads = worked(await openMap([fileOf(blocks)], short));
        expect([...roads.ways.id]).toEqual([2, 3]);
        expect([...roads.ways.kind]).toEqual([WAY_KIND.around, WAY_KIND.around]);
        expect(roads.ways.tags).toEqual([zone.tags, zone.tags]);
        expect([refsOf(roads, 0), refsOf(roads, 1)]).toEqual([
          [140, 150],
          [150, 159, 140],
        ]);
      }
    });

    it('leaves out the edges of a far wood', async () => {
      const wood = { ...zone, tags: { type: 'multipolygon', natural: 'wood' } };
      const roads = worked(await openMap([fileOf([{ nodes }, edges, { relations: [wood] }])], short));
      expect(roads.ways.count).toBe(0);
    });
  });

  it('keeps a ferry that crosses the drive with both ends out of reach, and none that does not', async () => {
    const ends = [
      { id: 1, lat: 50, lon: 6.9 },
      { id: 2, lat: 50, lon: 7.3 },
      { id: 3, lat: 51, lon: 6.9 },
      { id: 4, lat: 51, lon: 7.3 },
    ];
    const ferry = { route: 'ferry' };
    const path = fileOf([
      { nodes: ends },
      {
        ways: [
          { id: 1, refs: [1, 2], tags: ferry },
          { id: 2, refs: [3, 4], tags: ferry },
        ],
      },
    ]);
    const roads = worked(await openMap([path], short));
    expect([...roads.ways.id]).toEqual([1]);
    expect([...roads.nodes.id]).toEqual([1, 2]);
  });

  describe('of what lies around', () => {
    const km = 1 / 111.2;
    /** a square of 40 m, or with so much to a side, whose south-west corner lies so far north of the drive */
    const square = (id: number, northKm: number, sideKm = 0.04) =>
      [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ].map(([up = 0, right = 0], corner) => ({
        id: id * 10 + corner,
        lat: 50 + (northKm + up * sideKm) * km,
        lon: 7.11 + (right * sideKm - sideKm / 2) * km,
      }));
    const outline = (id: number) => [0, 1, 2, 3, 0].map((corner) => id * 10 + corner);

    async function keptOf(northKm: number, sideKm: number, wayTags: Record<string, string>) {
      const path = fileOf([
        { nodes: square(50, northKm, sideKm) },
        { ways: [{ id: 50, refs: outline(50), tags: wayTags }] },
      ]);
      return worked(await openMap([path], short)).ways.count;
    }

    it('keeps a house up to 500 m off and leaves out one 2 km off', async () => {
      expect(await keptOf(0.45, 0.04, { building: 'yes' })).toBe(1);
      expect(await keptOf(2, 0.04, { building: 'yes' })).toBe(0);
      expect(await keptOf(2, 0.04, { barrier: 'wall' })).toBe(0);
    });

    it('keeps rails, rivers and bridges as far as roads', async () => {
      for (const far of [
        { railway: 'rail' },
        { waterway: 'river' },
        { man_made: 'bridge' },
        { bridge: 'yes' },
      ])
        expect(await keptOf(2, 0.04, far as Record<string, string>)).toBe(1);
    });

    it('keeps a wood about the drive whose edge is 2 km off', async () => {
      expect(await keptOf(-2, 4, { natural: 'wood' })).toBe(1);
    });

    it('keeps a wood of two edges whole when only one comes near', async () => {
      const path = fileOf([
        { nodes: square(50, 0.3, 1.5) },
        {
          ways: [
            { id: 1, refs: [500, 503], tags: { barrier: 'fence' } },
            { id: 2, refs: [503, 502, 501, 500], tags: {} },
            { id: 3, refs: [501, 502], tags: {} },
          ],
        },
        {
          relations: [
            {
              id: 7,
              members: [2, 1].map((id) => ({ type: 'way' as const, id, role: 'outer' })),
              tags: { type: 'multipolygon', natural: 'wood' },
            },
          ],
        },
      ]);
      const { ways } = worked(await openMap([path], short));
      expect(Array.from(ways.id, (id, i) => [id, ways.tags[i]?.['natural']])).toEqual([
        [1, undefined],
        [1, 'wood'],
        [2, 'wood'],
      ]);
    });

    it('keeps no node for its address or name, but a gate on the road', async () => {
      const path = fileOf([
        {
          nodes: [
            { id: 1, lat: 50, lon: 7.1, tags: { 'addr:housenumber': '5', name: 'x' } },
            { id: 2, lat: 50, lon: 7.101, tags: { barrier: 'gate', name: 'y' } },
          ],
        },
        { ways: [{ id: 1, refs: [1, 2], tags }] },
      ]);
      const roads = worked(await openMap([path], short));
      expect([...roads.nodes.tags.values()]).toEqual([{ barrier: 'gate', name: 'y' }]);
    });
  });

  it('reads a file with ways before nodes to the same map', async () => {
    const ways = {
      ways: [
        { id: 1, refs: [101, 102, 103], tags },
        { id: 2, refs: [150, 151], tags },
      ],
    };
    const sorted = worked(await openMap([fileOf([{ nodes }, ways])], short));
    const unsorted = worked(await openMap([fileOf([ways, { nodes: [...nodes].reverse() }])], short));
    expect(unsorted.ways).toEqual(sorted.ways);
    expect(unsorted.nodes).toEqual(sorted.nodes);
  });

  it('finds nodes within reach on either side of the antimeridian', () => {
    const mask = corridorMask(
      routeAlong([
        [-17, 179.95],
        [-17, -179.95],
      ]),
    );
    for (const lon of [179.93, 179.99, 180, -180, -179.99, -179.93]) expect(mask.has(-17, lon)).toBe(true);
    for (const lon of [179.5, -179.5, 0]) expect(mask.has(-17, lon)).toBe(false);
  });

  it('does not join the pieces of a drive with a gap', () => {
    const [first, second] = [routeAlong([[50, 7]]), routeAlong([[52, 7]])];
    const mask = corridorMask({ ...first, segments: [...first.segments, ...second.segments] });
    expect([mask.has(50, 7), mask.has(51, 7), mask.has(52, 7)]).toEqual([true, false, true]);
  });

  it('of a drive without positions holds nothing', () => {
    expect(corridorMask({ ...short, segments: [] }).has(50, 7)).toBe(false);
  });

  it('touches every road segment up to 5 km long that passes within 400 m of the drive', () => {
    const metres = 111_195;
    fc.assert(
      fc.property(
        fc.double({ min: -75, max: 75, noNaN: true }),
        fc.double({ min: -180, max: 179.9, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        fc.double({ min: 0, max: 20_000, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: -400, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (lat, lon, heading, legM, along, besideM, roadHeading, share) => {
          const perLon = metres * Math.cos((lat * Math.PI) / 180);
          const wrap = (value: number) => ((value + 540) % 360) - 180;
          const at = (north: number, east: number): [number, number] => [
            lat + north / metres,
            wrap(lon + east / perLon),
          ];
          const [cos, sin] = [Math.cos(heading), Math.sin(heading)];
          const mask = corridorMask(routeAlong([at(0, 0), at(cos * legM, sin * legM)]));
          const north = cos * legM * along - sin * besideM;
          const east = sin * legM * along + cos * besideM;
          const end = (distance: number) =>
            mask.has(
              ...at(north + Math.cos(roadHeading) * distance, east + Math.sin(roadHeading) * distance),
            );
          expect(end(-share * 5000) || end((1 - share) * 5000)).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe('several map files', () => {
  const west = { nodes: nodes.slice(0, 30) };
  const east = { nodes: nodes.slice(29) };

  it('join at the nodes they share', async () => {
    const paths = [
      fileOf([west, { ways: [{ id: 1, refs: [128, 129], tags }] }]),
      fileOf([east, { ways: [{ id: 2, refs: [129, 130], tags }] }]),
    ];
    const roads = worked(await openMap(paths, undefined));
    expect([refsOf(roads, 0), refsOf(roads, 1)]).toEqual([
      [128, 129],
      [129, 130],
    ]);
    expect(roads.nodes.count).toBe(3);
    expect(roads.sources.length).toBe(2);
    expect(roads.notes).toEqual([]);
  });

  it('complete a road that either of them cuts, in either order, with or without a drive', async () => {
    const way = { ways: [{ id: 1, refs: [128, 129, 130, 131], tags }] };
    const paths = [fileOf([west, way]), fileOf([east, way])];
    const drive = routeAlong([
      [50, 8.4],
      [50, 8.5],
    ]);
    for (const order of [paths, [...paths].reverse()])
      for (const route of [undefined, drive]) {
        const roads = worked(await openMap(order, route));
        expect(roads.ways.count).toBe(1);
        expect(refsOf(roads, 0)).toEqual([128, 129, 130, 131]);
        expect(roads.notes).toEqual([]);
      }
  });

  it('of different dates are noticed', async () => {
    const moved = nodes.map((node) => (node.id === 110 ? { ...node, lat: 50.01 } : node));
    const way = { ways: [{ id: 1, refs: [110, 111], tags }] };
    const roads = worked(
      await openMap([fileOf([{ nodes }, way]), fileOf([{ nodes: moved }, way])], undefined),
    );
    expect(roads.notes.join()).toMatch(/differ in 1 /u);
  });

  it('give the same map in either order', async () => {
    const paths = [
      fileOf([west, { ways: [{ id: 1, refs: [110, 111], tags }] }]),
      fileOf([east, { ways: [{ id: 2, refs: [140, 141], tags }] }]),
    ];
    const one = worked(await openMap(paths, undefined));
    const other = worked(await openMap([...paths].reverse(), undefined));
    expect(one.nodes).toEqual(other.nodes);
    expect(one.ways).toEqual(other.ways);
  });
});

describe('a road whose nodes are missing from every file', () => {
  it('is cut there, and that is said', async () => {
    const refs = [100, 101, 999, 103, 998, 105, 106, 107];
    const roads = worked(await openMap([fileOf([{ nodes }, { ways: [{ id: 1, refs, tags }] }])], undefined));
    expect([...roads.ways.id]).toEqual([1, 1]);
    expect([refsOf(roads, 0), refsOf(roads, 1)]).toEqual([
      [100, 101],
      [105, 106, 107],
    ]);
    expect(roads.notes.join()).toMatch(/1 road lacks some of its nodes/u);
  });
});

describe('reading', () => {
  it('tells its progress up to 1, never falling', async () => {
    const shares: number[] = [];
    worked(
      await openMap([fileOf([{ nodes }]), fileOf([{ nodes }])], undefined, {
        onProgress: (share) => shares.push(share),
      }),
    );
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });

  it('stops when asked to', async () => {
    const path = fileOf([{ nodes }]);
    expect(await openMap([path], undefined, { signal: AbortSignal.abort() })).toMatchObject({
      ok: false,
      error: { code: 'cancelled' },
    });
    const stop = new AbortController();
    const result = openMap([path], undefined, { signal: stop.signal });
    stop.abort();
    expect(await result).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  });
});
