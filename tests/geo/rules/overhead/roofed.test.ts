import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { height } from '../../../../geo/rules/limits/height.ts';
import { roofed } from '../../../../geo/rules/overhead/roofed.ts';
import { askDrive, askRoad, COACHBUILT } from '../../../support/ask.ts';
import { testMap } from '../../../support/drive-on.ts';

const said = (tags: Tags) => askRoad(roofed, tags).map(({ level, folded }) => [level, folded ?? false]);

describe('a road closed in from above without a height', () => {
  it.each<[string, Tags]>([
    ['a tunnel', { tunnel: 'yes' }],
    ['a passage through a building', { tunnel: 'building_passage' }],
    ['a gallery against avalanches', { tunnel: 'avalanche_protector' }],
    ['a covered street', { covered: 'yes' }],
    ['an arcade', { covered: 'arcade' }],
  ])('%s is unknown, and shown on a minor road', (_, tags) => {
    expect(said(tags)).toEqual([['unknown', false]]);
    expect(askRoad(roofed, tags)).toMatchObject([{ kind: 'roof', wants: 'sign' }]);
    expect(askRoad(roofed, tags)[0]).toMatchObject({ subject: 'height', fromM: 0, vehicle: { value: 3.05 } });
  });

  it('on a main road it is folded, but for a passage through a building', () => {
    expect(said({ highway: 'primary', tunnel: 'yes' })).toEqual([['unknown', true]]);
    expect(said({ highway: 'primary', tunnel: 'building_passage' })).toEqual([['unknown', false]]);
  });

  it('on a main road it is shown to a vehicle higher than what passes where nothing is signed', () => {
    const card = { ...COACHBUILT, heightM: 5.1 };
    const [found] = askRoad(roofed, { highway: 'primary', tunnel: 'yes' }, { card, country: 'GB' });
    expect(found).toMatchObject({ level: 'unknown' });
    expect(found?.folded).toBeUndefined();
  });

  it('is unknown still where a height holds for a lane, for some hours or as advice alone', () => {
    expect(said({ tunnel: 'yes', 'maxheight:conditional': '4.5 @ (Mo-Fr)' })).toEqual([['unknown', false]]);
    expect(said({ tunnel: 'yes', 'maxheight:lanes': '4.5|' })).toEqual([['unknown', false]]);
  });

  it('says nothing where a height is mapped, or the tunnel is none', () => {
    expect(said({ tunnel: 'yes', maxheight: '4' })).toEqual([]);
    expect(said({ tunnel: 'no' })).toEqual([]);
    expect(said({ covered: 'no' })).toEqual([]);
    expect(said({})).toEqual([]);
    expect(said({ tunnel: 'yes', 'maxheight:backward': '4' })).toEqual([['unknown', false]]);
  });

  it.each(['none', 'no_sign', 'unsigned', 'default'])(
    'maxheight=%s is no height of a tunnel',
    (maxheight) => {
      for (const roof of [{ tunnel: 'yes' }, { covered: 'yes' }, { tunnel: 'building_passage' }]) {
        expect(said({ ...roof, maxheight })).toEqual([['unknown', false]]);
        expect(askRoad(roofed, { ...roof, maxheight }, { country: 'AT' })).toHaveLength(1);
      }
      expect(said({ tunnel: 'yes', maxheight, highway: 'primary' })).toEqual([['unknown', true]]);
      const [found] = askRoad(roofed, { tunnel: 'yes', maxheight });
      expect(found?.tags).toEqual({ tunnel: 'yes', maxheight });
      expect(found?.say).toBe(`A tunnel of 500 m; "maxheight=${maxheight}" gives no height for it.`);
    },
  );

  it.each(['none', 'no_sign', 'default'])(
    'maxheight=%s will do where the country promises enough on public roads',
    (maxheight) => {
      const inside = (tags: Tags, country: string, heightM = 3.05) =>
        askRoad(roofed, { tunnel: 'yes', maxheight, ...tags }, { country, card: { ...COACHBUILT, heightM } })
          .length;
      expect(inside({}, 'GB')).toBe(0);
      expect(inside({}, 'DE')).toBe(0);
      expect(inside({}, 'FR', 4.1)).toBe(0);
      // SSV art. 21(2): a vehicle 4.00 m high passes
      expect(inside({}, 'CH')).toBe(0);
      expect(inside({}, 'AT')).toBe(1);
    },
  );

  it('is said once: what the height subject says of the word is not said again', () => {
    const both = (tags: Tags, where: Parameters<typeof askRoad>[2]) =>
      [height, roofed].flatMap((rule) => askRoad(rule, { tunnel: 'yes', ...tags }, where));
    const tall = { ...COACHBUILT, heightM: 4.6 };
    expect(both({ maxheight: 'below_default' }, {})).toHaveLength(1);
    expect(both({ maxheight: 'none' }, { country: 'DE', card: tall })).toHaveLength(1);
    expect(both({ maxheight: 'unsigned' }, { country: 'DE', card: tall })).toHaveLength(1);
    expect(both({ maxheight: 'default' }, { country: 'DE', card: tall })).toHaveLength(1);
    expect(both({ maxheight: 'unsigned', highway: 'service' }, { country: 'DE' })).toHaveLength(1);
    expect(both({ maxheight: 'none', highway: 'service' }, { country: 'DE' })).toHaveLength(1);
    expect(both({ maxheight: 'low' }, {})).toHaveLength(1);
    expect(both({ maxheight: 'none', 'maxheight:physical': '4.2' }, {})).toEqual([]);
  });

  it('nothing matters to a vehicle no taller than a car', () => {
    expect(askRoad(roofed, { tunnel: 'yes' }, { card: { ...COACHBUILT, heightM: 1.8 } })).toEqual([]);
  });

  it('a tunnel of three ways is one finding; where one of them has a height it is folded', () => {
    const map = (middle: Tags) =>
      testMap([
        { id: 1, nodes: ['0,0', '1,0'], tags: { highway: 'tertiary', tunnel: 'yes' } },
        { id: 2, nodes: ['1,0', '2,0'], tags: { highway: 'tertiary', tunnel: 'yes', ...middle } },
        { id: 3, nodes: ['2,0', '3,0'], tags: { highway: 'tertiary', tunnel: 'yes' } },
      ]);
    const [whole, ...more] = askDrive(roofed, map({}), [1, 2, 3]);
    expect(more).toEqual([]);
    expect(whole?.osm.map(({ id }) => id)).toEqual([1, 2, 3]);
    expect(whole?.say).toMatch(/300 m/);
    const signed = askDrive(roofed, map({ maxheight: '4.2' }), [1, 2, 3]);
    expect(signed.map(({ osm, folded }) => [osm.map(({ id }) => id), folded])).toEqual([[[1, 3], true]]);
  });
});
