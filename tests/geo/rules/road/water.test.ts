import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { water } from '../../../../geo/rules/road/water.ts';
import { askDrive, askNode, askRoad } from '../../../support/ask.ts';
import { testMap } from '../../../support/drive-on.ts';

const level = (tags: Tags) => askRoad(water, tags).map((found) => found.level);

describe('water on the road', () => {
  it('a ford, as a node or a way, is care', () => {
    expect(askNode(water, { ford: 'yes' })).toMatchObject([
      { level: 'care', subject: 'water', kind: 'ford' },
    ]);
    expect(askNode(water, { ford: 'yes' })[0]?.osm[0]?.type).toBe('node');
    expect(askRoad(water, { ford: 'yes' })[0]?.say).toMatch(/^A ford over 500 m/);
  });

  it('its depth is told; one too deep to wade is tight', () => {
    const [deep] = askNode(water, { ford: 'yes', depth: '0.4' });
    expect(deep).toMatchObject({ level: 'tight', kind: 'deep ford' });
    expect(deep?.say).toMatch(/0\.40 m deep/);
    expect(deep?.advice).toMatch(/^Too deep/);
    expect(askNode(water, { ford: 'yes', depth: '0.1' })).toMatchObject([{ level: 'care', kind: 'ford' }]);
    expect(askNode(water, { ford: 'yes', depth: 'knee' })).toMatchObject([
      { level: 'care', say: 'A ford. A depth is mapped that cannot be read.' },
    ]);
  });

  it('one that runs dry says so', () => {
    expect(askNode(water, { ford: 'yes', intermittent: 'yes' })[0]?.say).toMatch(/dry at times/);
  });

  it('tidal and flooding roads are care', () => {
    expect(level({ tidal: 'yes' })).toEqual(['care']);
    expect(level({ flood_prone: 'yes' })).toEqual(['care']);
    expect(level({ hazard: 'flooding' })).toEqual(['care']);
    expect(level({ tidal: 'yes', flood_prone: 'yes' })).toHaveLength(2);
  });

  it('a ford for boats or walkers is unknown', () => {
    expect(askRoad(water, { ford: 'boat' })).toMatchObject([
      { level: 'unknown', kind: 'not for vehicles', wants: 'measure' },
    ]);
    expect(level({ ford: 'stepping_stones' })).toEqual(['unknown']);
  });

  it('no is no, and a brook beneath a bridge is none', () => {
    expect(level({ ford: 'no', tidal: 'no', flood_prone: 'no' })).toEqual([]);
    expect(level({ bridge: 'yes', hazard: 'wild_animals' })).toEqual([]);
  });

  it('the way through a ford and the node in it are one ford; two fords are two', () => {
    const map = testMap(
      [
        { id: 1, nodes: ['0,0', '1,0'], tags: { highway: 'track' } },
        { id: 2, nodes: ['1,0', '1.1,0', '1.2,0'], tags: { highway: 'track', ford: 'yes' } },
        { id: 3, nodes: ['1.2,0', '4,0', '5,0'], tags: { highway: 'track' } },
      ],
      { '1.1,0': { ford: 'yes' }, '4,0': { ford: 'yes' } },
    );
    expect(askDrive(water, map, [1, 2, 3]).map(({ osm }) => osm.length)).toEqual([2, 1]);
  });

  it('of several depths in one ford the greatest counts', () => {
    const map = testMap([{ id: 1, nodes: ['0,0', '1,0', '1.1,0', '2,0'], tags: { highway: 'track' } }], {
      '1,0': { ford: 'yes', depth: '0.5' },
      '1.1,0': { ford: 'yes', depth: '0.1' },
    });
    expect(askDrive(water, map, [1])).toMatchObject([{ level: 'tight', kind: 'deep ford' }]);
  });
});
