import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { bridgeAbove } from '../../../../geo/rules/overhead/bridge-above.ts';
import { COACHBUILT } from '../../../support/ask.ts';
import { across, area, askAround, road } from '../../../support/ask-around.ts';
import type { TestWay } from '../../../support/drive-on.ts';

const RAIL = { railway: 'rail', bridge: 'yes', layer: '1' };
const OVER = { highway: 'unclassified', bridge: 'yes', layer: '1' };
const MOTORWAY = { highway: 'motorway', bridge: 'yes', layer: '1' };

const above = (...ways: TestWay[]) => askAround(bridgeAbove, ways);

describe('what crosses over the driven road', () => {
  it('a railway bridge over a lane without a height is unknown and shown', () => {
    const [found, ...more] = above(road({}), across(7, 2, RAIL));
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      level: 'unknown',
      subject: 'height',
      kind: 'bridge above',
      wants: 'sign',
      vehicle: { value: 3.05 },
    });
    expect(found?.folded).toBeUndefined();
    expect(found?.fromM).toBeCloseTo(200, 0);
    expect(found?.toM).toBe(found?.fromM);
    expect(found?.osm).toEqual([
      { type: 'way', id: 1 },
      { type: 'way', id: 7 },
    ]);
    expect(found?.say).toMatch(/railway bridge/);
    expect(found?.advice).toMatch(/3\.10 m/);
  });

  it.each([
    ['a road', OVER],
    ['a footway', { highway: 'footway', bridge: 'yes' }],
    ['a cycleway', { highway: 'cycleway', bridge: 'boardwalk' }],
    ['a canal', { waterway: 'canal', bridge: 'aqueduct' }],
    ['a pipe', { man_made: 'pipeline', location: 'overhead' }],
    ['a railway on a higher layer alone', { railway: 'rail', layer: '1' }],
    ['a disused railway', { railway: 'disused', bridge: 'yes' }],
  ])('%s over a lane is too', (_, tags) => {
    expect(above(road({}), across(7, 2, tags)).map(({ level, folded }) => [level, folded])).toEqual([
      ['unknown', undefined],
    ]);
  });

  it.each([
    // the promises of a road without a sign: 16 ft 6 in in Great Britain, 4.5 m in Germany, as in the table of countries
    ['GB', 4.9, true],
    ['GB', 5.1, false],
    ['DE', 4.4, true],
    ['DE', 4.6, false],
  ] as const)(
    'over a main road in %s one without a height is a small matter to a vehicle of %f m: %s',
    (country, heightM, folded) => {
      const [found] = askAround(bridgeAbove, [road({ highway: 'primary' }), across(7, 2, OVER)], {
        country,
        card: { ...COACHBUILT, heightM },
      });
      expect(found?.folded ?? false).toBe(folded);
    },
  );

  it('over a main road only railways are shown, and over a motorway nothing is; all are counted', () => {
    const folded = (highway: string, tags: Record<string, string>) =>
      above(road({ highway }), across(7, 2, tags)).map((found) => found.folded ?? false);
    expect(folded('primary', OVER)).toEqual([true]);
    expect(folded('secondary', { ...OVER, highway: 'footway' })).toEqual([true]);
    expect(folded('primary', RAIL)).toEqual([false]);
    expect(folded('motorway', OVER)).toEqual([true]);
    expect(folded('motorway', RAIL)).toEqual([true]);
    expect(folded('tertiary', OVER)).toEqual([false]);
  });

  it('a motorway over a public lane is folded, over a track it is shown', () => {
    expect(above(road({}), across(7, 2, MOTORWAY))[0]?.folded).toBe(true);
    expect(above(road({ highway: 'track' }), across(7, 2, MOTORWAY))[0]?.folded).toBeUndefined();
  });
});

describe('a mapped height settles it', () => {
  it.each(['3.2', '4.5', 'default', 'none', 'unsigned', 'below_default', 'low'])(
    'maxheight=%s on the road beneath leaves it to the height subject',
    (maxheight) => {
      expect(above(road({ maxheight }), across(7, 2, RAIL))).toEqual([]);
    },
  );

  it('a short piece beneath carries it, also when cut a little beside', () => {
    const pieces = (from: number, to: number): TestWay[] => [
      { id: 1, nodes: ['0,0', `${from},0`], tags: { highway: 'unclassified' } },
      { id: 2, nodes: [`${from},0`, `${to},0`], tags: { highway: 'unclassified', maxheight: '3.9' } },
      { id: 3, nodes: [`${to},0`, '5,0'], tags: { highway: 'unclassified' } },
      across(7, 2, RAIL),
    ];
    expect(askAround(bridgeAbove, pieces(1.9, 2.1), { steps: [1, 2, 3] })).toEqual([]);
    expect(askAround(bridgeAbove, pieces(2.1, 2.3), { steps: [1, 2, 3] })).toEqual([]);
    expect(askAround(bridgeAbove, pieces(2.4, 2.6), { steps: [1, 2, 3] })).toHaveLength(1);
  });

  it('the height of the next bridge does not speak for this one', () => {
    const ways: TestWay[] = [
      { id: 1, nodes: ['0,0', '2.1,0'], tags: { highway: 'unclassified' } },
      { id: 2, nodes: ['2.1,0', '2.5,0'], tags: { highway: 'unclassified', maxheight: '4.5' } },
      { id: 3, nodes: ['2.5,0', '5,0'], tags: { highway: 'unclassified' } },
      across(7, 2, RAIL),
      across(8, 2.3, RAIL),
    ];
    const found = askAround(bridgeAbove, ways, { steps: [1, 2, 3] });
    expect(found.map(({ osm }) => osm.at(-1)?.id)).toEqual([7]);
  });

  it('the opposite direction’s height, and one for lorries, do not', () => {
    expect(above(road({ 'maxheight:backward': '3' }), across(7, 2, RAIL))).toHaveLength(1);
    expect(above(road({ 'maxheight:hgv': '3' }), across(7, 2, RAIL))).toHaveLength(1);
  });

  it('a height mapped on a railway’s bridge itself is told as a doubt, never judged', () => {
    const [found] = above(road({ highway: 'motorway' }), across(7, 2, { ...RAIL, maxheight: '2.9' }));
    expect(found).toMatchObject({ level: 'unknown' });
    expect(found?.say).toMatch(/maxheight=2.9/);
    expect(found?.folded).toBeUndefined();
  });
});

describe('what is not above', () => {
  it.each([
    ['a level crossing without a bridge', across(7, 2, { railway: 'rail' })],
    ['a railway in a tunnel', across(7, 2, { railway: 'rail', tunnel: 'yes', layer: '-1' })],
    ['a road beneath', across(7, 2, { highway: 'residential', layer: '-1', tunnel: 'yes' })],
    ['a bridge one layer down', across(7, 2, { ...RAIL, layer: '-1' })],
    ['a railway that is gone', across(7, 2, { railway: 'razed', bridge: 'yes' })],
    ['a power line', across(7, 2, { power: 'line', layer: '3' })],
    ['a bridge beyond the end', across(7, 6, RAIL)],
    ['a stream', across(7, 2, { waterway: 'stream', layer: '1' })],
  ])('%s', (_, other) => {
    expect(above(road({ layer: '0' }), other)).toEqual([]);
  });

  it('what we drive over: our bridge above theirs', () => {
    expect(above(road({ bridge: 'yes', layer: '2' }), across(7, 2, RAIL))).toEqual([]);
    expect(above(road({ bridge: 'yes' }), across(7, 2, { railway: 'rail' }))).toEqual([]);
    expect(above(road({ bridge: 'yes', layer: '1' }), across(7, 2, { ...RAIL, layer: '2' }))).toHaveLength(1);
  });

  it('a bridge that meets the road at a node', () => {
    const ways: TestWay[] = [
      { id: 1, nodes: ['0,0', '2,0', '5,0'], tags: { highway: 'unclassified' } },
      { id: 7, nodes: ['2,-1', '2,0', '2,1'], tags: OVER },
    ];
    expect(askAround(bridgeAbove, ways)).toEqual([]);
  });

  it('the outline of the bridge we drive over', () => {
    const ways: TestWay[] = [
      { id: 1, nodes: ['0,0', '2,0'], tags: { highway: 'unclassified' } },
      { id: 2, nodes: ['2,0', '3,0'], tags: { highway: 'unclassified', bridge: 'yes', layer: '1' } },
      { id: 3, nodes: ['3,0', '5,0'], tags: { highway: 'unclassified' } },
      area(7, 1.95, -0.1, 3.05, 0.1, { man_made: 'bridge', layer: '1' }),
    ];
    expect(askAround(bridgeAbove, ways, { steps: [1, 2, 3] })).toEqual([]);
  });

  it('anything while we are in a tunnel or under a roof: that itself is asked', () => {
    expect(above(road({ tunnel: 'yes', layer: '-1' }), across(7, 2, RAIL))).toEqual([]);
  });

  it('nothing matters to a vehicle no taller than a car', () => {
    const card = { ...COACHBUILT, heightM: 1.8 };
    expect(askAround(bridgeAbove, [road({}), across(7, 2, RAIL)], { card })).toEqual([]);
  });
});

describe('one bridge is one finding', () => {
  it('met exactly at a vertex of the road, of the bridge, or of both', () => {
    const ours: TestWay = { id: 1, nodes: ['0,0', '2,0', '5,0'], tags: { highway: 'unclassified' } };
    const theirs: TestWay = { id: 7, nodes: ['2,-1', '2,0.00001', '2,1'], tags: RAIL, around: true };
    expect(above(ours, across(7, 2, RAIL))).toHaveLength(1);
    expect(above(road({}), theirs)).toHaveLength(1);
    expect(above(ours, theirs)).toHaveLength(1);
  });

  it('two tracks and a path within 25 m, named after the railway', () => {
    const path = { highway: 'path', bridge: 'yes' };
    const found = above(road({}), across(7, 2, path), across(8, 2.1, RAIL), across(9, 2.3, RAIL));
    expect(found).toHaveLength(1);
    expect(found[0]?.say).toMatch(/^A railway bridge and more beside it cross/);
    expect(found[0]?.osm.map(({ id }) => id)).toEqual([1, 8, 9, 7]);
  });

  it('but not two bridges 60 m apart', () => {
    expect(above(road({}), across(7, 2, RAIL), across(8, 2.6, RAIL))).toHaveLength(2);
  });

  it('the outline of our own bridge is none, wherever it begins and however the road on it is tagged', () => {
    const map = [
      { id: 1, nodes: ['0,0', '2,0'], tags: { highway: 'unclassified' } },
      { id: 2, nodes: ['2,0', '3,0'], tags: { highway: 'unclassified', bridge: 'yes', layer: '1' } },
      { id: 3, nodes: ['3,0', '5,0'], tags: { highway: 'unclassified' } },
    ];
    const long = area(8, 1.2, -0.2, 3.8, 0.2, { man_made: 'bridge', layer: '1' });
    expect(askAround(bridgeAbove, [...map, long], { steps: [1, 2, 3] })).toEqual([]);
    for (const layer of [{}, { layer: '1' }]) {
      const outline = area(8, 1.8, -1, 2.2, 1, { man_made: 'bridge', ...layer });
      expect(above(road({ layer: '1' }), outline)).toEqual([]);
    }
    const higher = area(8, 1.8, -1, 2.2, 1, { man_made: 'bridge', layer: '2' });
    expect(above(road({ layer: '1' }), higher)).toHaveLength(1);
  });

  it('is called a bridge only where it is tagged as one', () => {
    const say = (tags: Tags, ours: Tags = {}) => above(road(ours), across(7, 2, tags))[0]?.say;
    expect(say({ railway: 'rail', layer: '1' })).toMatch(
      /^A railway crosses over the road, by the layers mapped; no height/,
    );
    expect(say({ highway: 'unclassified' }, { layer: '-1' })).toMatch(
      /^A road crosses over the road, by the layers mapped/,
    );
    expect(say(RAIL)).toMatch(/^A railway bridge crosses over the road; no height/);
  });

  it('its outline is not said beside what runs over it, and is said where nothing does', () => {
    const outline = area(8, 1.8, -1, 2.2, 1, { man_made: 'bridge', layer: '1' });
    expect(above(road({}), across(7, 2, RAIL), outline)).toHaveLength(1);
    expect(above(road({}), outline)).toHaveLength(1);
  });

  it('driven under twice, the second time is folded and has an id of its own', () => {
    const ways = [road({}), across(7, 2, RAIL)];
    const found = askAround(bridgeAbove, ways, { steps: [1, -1, 1] });
    expect(found.map(({ folded }) => folded ?? false)).toEqual([false, true, true]);
    expect(new Set(found.map(({ id }) => id)).size).toBe(3);
  });

  it('a country where no sign promises a height says so, on a public road', () => {
    const ways = (highway: string) => [road({ highway }), across(7, 2, RAIL)];
    const advice = (highway: string, country: string) =>
      askAround(bridgeAbove, ways(highway), { country })[0]?.advice;
    expect(advice('unclassified', 'GB')).toMatch(
      /should leave at least 5\.03 m .*a sign can be missing, so look\.$/,
    );
    expect(advice('service', 'GB')).not.toMatch(/no sign/);
    expect(advice('unclassified', 'IE')).not.toMatch(/no sign/);
  });
});

describe('roofs and gateways', () => {
  it('a roof over a filling station’s drive is unknown, a building drawn over the road is counted only', () => {
    const drive = road({ highway: 'service' });
    const roof = above(drive, area(7, 2, -0.1, 2.3, 0.1, { building: 'roof', layer: '1' }));
    expect(roof.map(({ level, folded }) => [level, folded])).toEqual([['unknown', undefined]]);
    const house = above(drive, area(7, 2, -0.1, 2.3, 0.1, { building: 'yes' }));
    expect(house.map(({ level, folded }) => [level, folded])).toEqual([['unknown', true]]);
    expect(above(drive, area(7, 2, -0.1, 2.3, 0.1, { building: 'yes', layer: '-1' }))).toEqual([]);
  });
});

describe('a building over the road with the height of its underside', () => {
  const part = (tags: Record<string, string>) => area(7, 2, -1, 2.2, 1, { 'building:part': 'yes', ...tags });
  const found = (tags: Record<string, string>, ours: Record<string, string> = {}) =>
    above(road(ours), part(tags)).map(({ level, folded }) => [level, folded ?? false]);

  it('too low or tight for the vehicle is unknown and shown, with the figure', () => {
    // the vehicle needs 3.10 m and 0.15 m to spare
    for (const min_height of ['2.8', '3.1', '3.2', "9'"])
      expect(found({ min_height })).toEqual([['unknown', false]]);
    expect(above(road({}), part({ min_height: '2.8' }))[0]?.say).toBe(
      'A building is drawn over the road; no height is mapped on this road. Its underside is mapped at 2.80 m (min_height=2.8).',
    );
    const whole = area(7, 2, -1, 2.2, 1, { building: 'yes', min_height: '3' });
    expect(above(road({}), whole).map(({ level, folded }) => [level, folded])).toEqual([
      ['unknown', undefined],
    ]);
    const roof = area(7, 2, -1, 2.2, 1, { building: 'roof', min_height: '3' });
    expect(above(road({ highway: 'primary' }), roof).map(({ folded }) => folded)).toEqual([undefined]);
  });

  it('high enough says nothing', () => {
    expect(found({ min_height: '3.25' })).toEqual([]);
    expect(found({ min_height: '12' })).toEqual([]);
    expect(above(road({}), area(7, 2, -1, 2.2, 1, { building: 'yes', min_height: '6 m' }))).toEqual([]);
  });

  it('that nobody can read, or a storey without a height, is unknown', () => {
    expect(found({ min_height: 'low' })).toEqual([['unknown', false]]);
    expect(found({ 'building:min_level': '1' })).toEqual([['unknown', true]]);
  });

  it('a part that stands on the ground is a slip of the pencil, as a building is none the less folded', () => {
    expect(found({})).toEqual([]);
    expect(found({ min_height: '0' })).toEqual([]);
    expect(
      above(road({}), area(7, 2, -1, 2.2, 1, { building: 'yes', min_height: '0' })).map(
        ({ folded }) => folded,
      ),
    ).toEqual([true]);
  });

  it('a height on the road itself decides', () => {
    expect(found({ min_height: '2.8' }, { maxheight: '4' })).toEqual([]);
  });
});
