import { describe, expect, it } from 'vitest';
import { isArea, isRestriction, isStandingNode, wayKind } from '../../../geo/roads/keep.ts';
import { WAY_KIND } from '../../../geo/roads/roads.ts';

describe('what a way is to a drive', () => {
  for (const highway of [
    'motorway',
    'residential',
    'track',
    'footway',
    'cycleway',
    'construction',
    'busway',
    'road',
    'pedestrian',
    'something_new',
  ])
    it(`highway=${highway} is a road`, () => {
      expect(wayKind({ highway })).toBe(WAY_KIND.road);
    });

  for (const tags of [
    { highway: 'proposed' },
    { highway: 'abandoned' },
    { highway: 'disused' },
    { highway: 'historic' },
    { highway: 'razed' },
    { name: 'x' },
    { building: 'no' },
    { historic: 'castle' },
    {},
  ])
    it(`${JSON.stringify(tags)} is nothing`, () => {
      expect(wayKind(tags as Record<string, string>)).toBeUndefined();
    });

  it('a square is an area and lies around', () => {
    expect(wayKind({ highway: 'pedestrian', area: 'yes' })).toBe(WAY_KIND.around);
  });

  it('a ferry is a ferry', () => {
    expect(wayKind({ route: 'ferry', motor_vehicle: 'yes' })).toBe(WAY_KIND.ferry);
  });

  for (const tags of [
    { railway: 'rail' },
    { waterway: 'river' },
    { natural: 'wood' },
    { landuse: 'forest' },
    { building: 'yes' },
    { man_made: 'bridge' },
    { barrier: 'wall' },
    { historic: 'city_gate' },
    { man_made: 'arch' },
    { man_made: 'torii' },
    { natural: 'mud' },
    { natural: 'shoal' },
    { natural: 'dune' },
  ])
    it(`${JSON.stringify(tags)} lies around`, () => {
      expect(wayKind(tags as Record<string, string>)).toBe(WAY_KIND.around);
    });

  it('a road drawn on a dyke or beside rails is a road', () => {
    expect(wayKind({ highway: 'service', man_made: 'embankment', railway: 'tram' })).toBe(WAY_KIND.road);
  });
});

it('a camp site, a tree and a town stand for themselves; a bench does not', () => {
  expect(isStandingNode({ tourism: 'caravan_site' })).toBe(true);
  expect(isStandingNode({ natural: 'tree' })).toBe(true);
  expect(isStandingNode({ place: 'town' })).toBe(true);
  expect(isStandingNode({ amenity: 'bench' })).toBe(false);
});

it('a square drawn by several ways is an area, a road drawn so is none', () => {
  expect(isArea({ type: 'multipolygon', highway: 'pedestrian' })).toBe(true);
  expect(isArea({ type: 'multipolygon', highway: 'track' })).toBe(false);
  expect(isArea({ type: 'multipolygon', route: 'ferry' })).toBe(false);
});

it('turn restrictions of one mode are turn restrictions', () => {
  expect(isRestriction({ type: 'restriction:hgv' })).toBe(true);
  expect(isRestriction({ type: 'route' })).toBe(false);
});
