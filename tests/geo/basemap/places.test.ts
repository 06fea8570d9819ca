import { describe, expect, it } from 'vitest';
import { drawKind } from '../../../geo/basemap/draw-kind.ts';
import { placesOf } from '../../../geo/basemap/places.ts';
import { type Tags, WAY_KIND } from '../../../geo/roads/roads.ts';

describe('names on the map', () => {
  const x = Float64Array.of(10, 20, 30, 40);
  const y = Float64Array.of(1, 2, 3, 4);
  const nodes = (tags: Tags) => ({ count: 4, id: x, lat: y, lon: x, tags: new Map([[1, tags]]) }) as const;
  const ofNode = (tags: Tags) => placesOf(nodes(tags), [], x, y)[0];

  it('are those of towns, stations and sites, where the map has a name', () => {
    expect(ofNode({ place: 'town', name: 'Dale' })).toMatchObject({ say: 'Dale', x: 20, y: 2 });
    expect(ofNode({ railway: 'halt', name: 'Mill' })).toMatchObject({ kind: 'station', say: 'Mill' });
    expect(ofNode({ tourism: 'caravan_site', name: 'Meadow' })).toMatchObject({
      kind: 'site',
      rank: 40,
      minZoom: 12,
    });
    expect(ofNode({ place: 'town' })).toBeUndefined();
    expect(ofNode({ shop: 'bakery', name: 'Crumb' })).toBeUndefined();
  });

  it('of lakes, woods and sites stand in the middle of their box, and take no more room than that', () => {
    const refs = Uint32Array.of(0, 2, 3);
    const area = (kind: string, tags: Tags) =>
      placesOf(
        nodes({}),
        [{ area: true, kind, refs, tags }] as unknown as Parameters<typeof placesOf>[1],
        x,
        y,
      )[0];
    expect(area('water', { name: 'Mere' })).toMatchObject({
      say: 'Mere',
      kind: 'water',
      rank: 55,
      x: 25,
      y: 2.5,
      width: 30,
    });
    expect(area('park', { name: 'Camp', tourism: 'camp_site' })).toMatchObject({ kind: 'site', rank: 40 });
    expect(area('wood', {})).toBeUndefined();
    expect(area('building', { name: 'Hall' })).toBeUndefined();
  });
});

describe('what of a way is drawn', () => {
  const drawn = (
    tags: Tags,
    { closed = false, way = WAY_KIND.around }: { closed?: boolean; way?: number } = {},
  ) => drawKind({ tags, kind: way, closed });
  const kind = (tags: Tags) => drawn(tags)?.kind;
  const road = (tags: Tags) => drawn(tags, { way: WAY_KIND.road });

  it('are sidings thinner than lines, piers and walls, but no kerb', () => {
    expect([kind({ railway: 'rail' }), kind({ railway: 'rail', service: 'siding' })]).toEqual([
      'rail',
      'railMinor',
    ]);
    expect(kind({ barrier: 'wall' })).toBe('wall');
    expect(kind({ barrier: 'kerb' })).toBeUndefined();
    for (const built of ['pier', 'breakwater', 'groyne']) expect(kind({ man_made: built })).toBe('pier');
    expect(kind({ natural: 'tree_row' })).toBe('treeRow');
  });

  it('is a ferry, and a slip road thinner than the road it leads to', () => {
    expect(drawn({ route: 'ferry' }, { way: WAY_KIND.ferry })).toEqual({
      kind: 'ferry',
      level: 0,
      area: false,
    });
    expect(road({ highway: 'trunk' })?.kind).toBe('trunk');
    expect(road({ highway: 'trunk_link' })?.kind).toBe('link');
  });

  it('is a bridge above the ground, as high as its layer, a road in a tunnel below it, a stream in a pipe not at all', () => {
    const level = (tags: Tags) => road({ highway: 'primary', ...tags })?.level;
    expect(
      [{}, { bridge: 'yes' }, { bridge: 'yes', layer: '2' }, { bridge: 'yes', layer: 'up' }].map(level),
    ).toEqual([0, 1, 2, 1]);
    expect(
      [{ bridge: 'yes', layer: '-3' }, { bridge: 'yes', layer: '99' }, { tunnel: 'yes' }].map(level),
    ).toEqual([1, 5, -1]);
    expect(kind({ waterway: 'stream', tunnel: 'culvert' })).toBeUndefined();
  });

  it('is ground paved for people where its line closes', () => {
    for (const highway of ['pedestrian', 'services', 'rest_area']) {
      expect(drawn({ highway }, { closed: true })).toEqual({ kind: 'paved', level: 0, area: true });
      expect(drawn({ highway })).toBeUndefined();
    }
  });
});
