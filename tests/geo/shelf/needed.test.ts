import { describe, expect, it } from 'vitest';
import { corridorMask } from '../../../geo/roads/mask.ts';
import { type Tags, WAY_KIND } from '../../../geo/roads/roads.ts';
import type { BlockContent, BlockRelation } from '../../../geo/shelf/block.ts';
import { neededOf } from '../../../geo/shelf/needed.ts';
import { encodeTags } from '../../../geo/shelf/tag-bytes.ts';

/** A degree of latitude, as far as these places need it. */
const METRES_PER_DEGREE = 111_195;
const ROAD: Tags = { highway: 'residential' };

interface Line {
  readonly id: number;
  /** metres north of the drive, and east along it; undefined: a node that the source lacks */
  readonly at: readonly (readonly [number, number] | undefined)[];
  readonly tags?: Tags;
  readonly kind?: number;
}

/** A drive of 10 km due east along the equator, a position every so many metres. */
function driveEast(everyM: number) {
  const lon = Float64Array.from({ length: 10_000 / everyM + 1 }, (_, i) => (i * everyM) / METRES_PER_DEGREE);
  return { segments: [{ lat: new Float64Array(lon.length), lon }] };
}

function tileOf(
  lines: readonly Line[],
  relations: readonly BlockRelation[] = [],
  alone: Tags[] = [],
): BlockContent {
  const places = lines.flatMap(({ at }) => at);
  const standing = alone.map(() => [2000, 5000] as const);
  const all = [...places, ...standing];
  const degrees = (i: 0 | 1) =>
    Float64Array.from(all, (place) => (place?.[i] ?? Number.NaN) / METRES_PER_DEGREE);
  const start = [0];
  for (const { at } of lines) start.push((start.at(-1) ?? 0) + at.length);
  return {
    sets: [...lines.map(({ tags = ROAD }) => tags), ...alone, { type: 'multipolygon', natural: 'water' }].map(
      encodeTags,
    ),
    nodes: {
      count: all.length,
      id: Float64Array.from(all, (_, i) => i + 1),
      lat: degrees(0),
      lon: degrees(1),
      tagged: {
        node: Uint32Array.from(alone, (_, i) => places.length + i),
        set: Uint32Array.from(alone, (_, i) => lines.length + i),
      },
    },
    ways: {
      count: lines.length,
      id: Float64Array.from(lines, ({ id }) => id),
      kind: Uint8Array.from(lines, ({ kind = WAY_KIND.road }) => kind),
      set: Uint32Array.from(lines, (_, i) => i),
      start: Uint32Array.from(start),
      refs: Uint32Array.from(places, (_, i) => i),
    },
    relations,
  };
}

const beside = (northM: number) => [[northM, 4900] as const, [northM, 5100] as const];

function toldOf(tile: BlockContent, roads: 'close' | 'reach' = 'close', everyM = 50): number[] {
  const [needed] = neededOf([tile], corridorMask(driveEast(everyM)), roads);
  return (needed?.ways ?? []).map((way) => tile.ways.id[way] ?? Number.NaN);
}

describe('what of a tile a drive may need', () => {
  it('is every road within a kilometre, and of those farther off none', () => {
    const roads = [0, 500, -1000, 1800, -2500, 9000].map((northM, id) => ({ id, at: beside(northM) }));
    expect(toldOf(tileOf(roads))).toEqual([0, 1, 2]);
  });

  it('is every road within reach of a route of points far apart, and where all are asked for', () => {
    const roads = [0, 2500, 9000].map((northM, id) => ({ id, at: beside(northM) }));
    expect(toldOf(tileOf(roads), 'close', 500)).toEqual([0, 1]);
    expect(toldOf(tileOf(roads), 'reach')).toEqual([0, 1]);
  });

  it('is a road whose ends lie far off when it crosses the drive between them', () => {
    const crossing: Line = {
      id: 7,
      at: [
        [-2000, 5000],
        [2000, 5000],
      ],
    };
    expect(toldOf(tileOf([crossing]))).toEqual([7]);
  });

  it('is a road within reach that lacks a node: nobody can tell where it runs', () => {
    expect(toldOf(tileOf([{ id: 8, at: [[2000, 5000], undefined, [2000, 5100]] }]))).toEqual([8]);
  });

  it('is a road far off that an area ends at, and a zone or a ferry wherever it lies', () => {
    const area: BlockRelation = { id: 1, set: 3, members: [{ type: 'way', id: 1, role: 'outer' }] };
    const lines: Line[] = [
      { id: 1, at: beside(2000) },
      { id: 2, at: beside(9000), kind: WAY_KIND.around, tags: { boundary: 'low_emission_zone' } },
      { id: 3, at: beside(9000), kind: WAY_KIND.ferry, tags: { route: 'ferry' } },
    ];
    expect(toldOf(tileOf(lines, [area]))).toEqual([1, 2, 3]);
  });

  it('is of what lies around all within reach', () => {
    const rails = { kind: WAY_KIND.around, tags: { railway: 'rail' } };
    expect(toldOf(tileOf([{ id: 4, at: beside(2500), ...rails }]))).toEqual([4]);
  });

  it('is every node of such a way, and of others those that stand for themselves', () => {
    const lines = [0, 2500].map((northM, id) => ({ id, at: beside(northM) }));
    const tile = tileOf(lines, [], [{ amenity: 'fuel' }, { highway: 'crossing' }]);
    const [needed] = neededOf([tile], corridorMask(driveEast(50)), 'close');
    expect([...(needed?.nodes ?? [])]).toEqual([1, 1, 0, 0, 1, 0]);
    expect(needed?.nodeCount).toBe(3);
  });
});
