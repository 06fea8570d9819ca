import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { partOfYear } from '../../../../geo/rules/road/part-of-year.ts';
import { askDrive, askRoad } from '../../../support/ask.ts';
import { testMap } from '../../../support/drive-on.ts';

const said = (tags: Tags) =>
  askRoad(partOfYear, { surface: 'asphalt', ...tags }).map(({ level, say }) => [level, say]);

describe('a road that is not there all the year', () => {
  it('over ice is unknown', () => {
    expect(said({ ice_road: 'yes' })).toEqual([
      ['unknown', '500 m of road over ice (ice_road=yes): there in hard winters only.'],
    ]);
  });

  it('of winter or of a season is unknown, with the words as mapped', () => {
    expect(said({ winter_road: 'yes' })).toEqual([
      ['unknown', '500 m of road that is used in winter only (winter_road=yes).'],
    ]);
    expect(said({ seasonal: 'summer' })).toEqual([
      ['unknown', '500 m of road that is open for part of the year (seasonal=summer).'],
    ]);
    expect(said({ seasonal: 'yes' })[0]?.[0]).toBe('unknown');
    expect(said({ seasonal: 'dry_season;autumn' })[0]?.[0]).toBe('unknown');
  });

  it('a ferry of a season is too', () => {
    const map = testMap([{ id: 1, nodes: ['0,0', '5,0'], tags: { route: 'ferry', seasonal: 'summer' } }]);
    expect(askDrive(partOfYear, map, [1]).map(({ say }) => say)).toEqual([
      '500 m of ferry that runs for part of the year (seasonal=summer).',
    ]);
  });

  it('says nothing where it says no, and nothing of the water in a ford', () => {
    for (const key of ['ice_road', 'winter_road', 'seasonal']) expect(said({ [key]: 'no' })).toEqual([]);
    expect(said({ ford: 'yes', seasonal: 'yes' })).toEqual([]);
  });

  it('wants to be asked about', () => {
    expect(askRoad(partOfYear, { ice_road: 'yes' })).toMatchObject([
      { kind: 'part of the year', wants: 'permission' },
    ]);
  });

  it('of several ways is one finding', () => {
    const tags = { highway: 'tertiary', surface: 'asphalt', seasonal: 'summer' };
    const map = testMap([
      { id: 1, nodes: ['0,0', '3,0'], tags },
      { id: 2, nodes: ['3,0', '6,0'], tags },
    ]);
    expect(askDrive(partOfYear, map, [1, 2]).map(({ osm }) => osm.length)).toEqual([2]);
  });
});
