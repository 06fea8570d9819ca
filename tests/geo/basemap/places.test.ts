import { describe, expect, it } from 'vitest';
import { drawKind } from '../../../geo/basemap/draw-kind.ts';
import { placesOf } from '../../../geo/basemap/places.ts';
import type { Tags } from '../../../geo/roads/roads.ts';

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
  const kind = (tags: Tags) =>
    drawKind({ tags, closed: false } as unknown as Parameters<typeof drawKind>[0])?.kind;
  it('are sidings thinner than lines, piers and walls, but no kerb', () => {
    expect([kind({ railway: 'rail' }), kind({ railway: 'rail', service: 'siding' })]).toEqual([
      'rail',
      'railMinor',
    ]);
    expect(kind({ barrier: 'wall' })).toBe('wall');
    expect(kind({ barrier: 'kerb' })).toBeUndefined();
  });
});
