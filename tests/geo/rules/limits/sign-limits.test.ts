import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { axle } from '../../../../geo/rules/limits/axle.ts';
import { height } from '../../../../geo/rules/limits/height.ts';
import { length } from '../../../../geo/rules/limits/length.ts';
import { mass } from '../../../../geo/rules/limits/mass.ts';
import { width } from '../../../../geo/rules/limits/width.ts';
import type { SubjectRule } from '../../../../geo/rules/rule.ts';
import { askDrive, askNode, askRoad, COACHBUILT } from '../../../support/ask.ts';
import { testMap } from '../../../support/drive-on.ts';

const levels = (rule: SubjectRule, tags: Tags, options: Parameters<typeof askRoad>[2] = {}) =>
  askRoad(rule, tags, options).map(({ level }) => level);

const ALL = [height, width, length, mass, axle];
const anything = (tags: Tags, options: Parameters<typeof askRoad>[2] = {}) =>
  ALL.flatMap((rule) => levels(rule, tags, options));

describe('a limit that stands in traffic_sign or hazard alone', () => {
  it('is unknown with the text as mapped', () => {
    const [found, ...more] = askRoad(height, { traffic_sign: 'DE:265[3]' });
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      level: 'unknown',
      subject: 'height',
      tags: { traffic_sign: 'DE:265[3]' },
    });
    expect(found?.say).toBe(
      'A sign is mapped ("traffic_sign=DE:265[3]") and no height limit of the road itself.',
    );
    expect(found?.advice).toMatch(/3\.10 m/);
  });

  it.each<[string, SubjectRule]>([
    ['DE:265', height],
    ['DE:265-3.0', height],
    ['DE:265[3,0]', height],
    ['DE:274[30],265[3]', height],
    ['DE:274[30];DE:265[3 m]', height],
    ['GB:629.2A', height],
    ['GB:530A[10\'3"]', height],
    ['FR:B12', height],
    ['AT:52.9b', height],
    ['CH:2.19', height],
    ['NL:C19', height],
    ['BE:C29', height],
    ['ES:R205', height],
    ['PL:B-16', height],
    ['US:W12-2', height],
    ['maxheight', height],
    ['Low bridge 3.0 m', height],
    ['headroom', height],
    ['DE:264[2]', width],
    ['GB:629A', width],
    ['FR:B11', width],
    ['maxwidth', width],
    ['DE:266', length],
    ['NL:C17', length],
    ['DE:262[2.8]', mass],
    ['GB:626.2A', mass],
    ['NL:C21', mass],
    ['weak_bridge', mass],
    ['weight limit 3 t', mass],
    ['DE:263', axle],
    ['FR:B13a', axle],
  ])('traffic_sign=%s', (text, rule) => {
    expect(levels(rule, { traffic_sign: text })).toEqual(['unknown']);
    expect(anything({ traffic_sign: text })).toHaveLength(1);
    expect(askNode(rule, { traffic_sign: text }).map(({ level }) => level)).toEqual(['unknown']);
  });

  it.each<[string, SubjectRule]>([
    ['low_bridge', height],
    ['overhead_clearance', height],
    ['height restriction', height],
    ['max 3.0 m high', height],
    ['weak bridge', mass],
    ['DE:265[3]', height],
  ])('hazard=%s', (text, rule) => {
    expect(levels(rule, { hazard: text })).toEqual(['unknown']);
  });

  it('a bare figure whose kind nobody tells is unknown once', () => {
    expect(anything({ hazard: '3.0 m' })).toEqual(['unknown']);
    expect(anything({ hazard: '10\'6"' })).toEqual(['unknown']);
    expect(anything({ traffic_sign: '3 t' })).toEqual(['unknown']);
  });

  it('a figure that leaves the vehicle free is read, and nothing to say', () => {
    expect(anything({ traffic_sign: 'DE:265[4]' })).toEqual([]);
    expect(anything({ traffic_sign: 'DE:265-3.8' })).toEqual([]);
    expect(anything({ traffic_sign: 'DE:262[7.5]' })).toEqual([]);
    expect(levels(height, { traffic_sign: 'DE:265[4]' }, { card: { ...COACHBUILT, heightM: 4.1 } })).toEqual([
      'unknown',
    ]);
    // StVO Anlage 2: 266 length, 263 a single axle
    expect(anything({ traffic_sign: 'DE:266[10]' })).toEqual([]);
    expect(levels(length, { traffic_sign: 'DE:266[6]' })).toEqual(['unknown']);
    expect(anything({ traffic_sign: 'DE:263[3]' })).toEqual([]);
    expect(levels(axle, { traffic_sign: 'DE:263[1.5]' })).toEqual(['unknown']);
    expect(
      levels(
        axle,
        { traffic_sign: 'DE:263[3]' },
        { load: { rearKg: 3100, frontKg: 1500, grossKg: 4600 } as never },
      ),
    ).toEqual(['unknown']);
    expect(levels(height, { traffic_sign: 'DE:265[4];DE:265[3]' })).toEqual(['unknown']);
  });

  it('says nothing where the limit itself is mapped', () => {
    expect(anything({ traffic_sign: 'DE:265[4.2]', maxheight: '4.2' })).toEqual([]);
    expect(anything({ traffic_sign: 'DE:265', 'maxheight:physical': '4.2' })).toEqual([]);
    expect(anything({ traffic_sign: 'DE:262', maxweightrating: '7.5' })).toEqual([]);
    // one of them is not the other
    expect(levels(height, { traffic_sign: 'DE:265', maxwidth: '3' })).toEqual(['unknown']);
  });

  it('a sign on a node stands for the road it begins', () => {
    const map = (sign: Tags, ahead: Tags) =>
      testMap(
        [
          { id: 1, nodes: ['0,0', '3,0'], tags: { highway: 'residential' } },
          { id: 2, nodes: ['3,0', '6,0'], tags: { highway: 'residential', ...ahead } },
        ],
        { '3,0': sign },
      );
    const sign = { traffic_sign: 'DE:265[3]' };
    expect(askDrive(height, map(sign, { maxheight: '4' }), [1, 2])).toEqual([]);
    expect(askDrive(height, map(sign, {}), [1, 2]).map(({ level }) => level)).toEqual(['unknown']);
    const turned = { ...sign, direction: 'backward' };
    expect(askDrive(height, map(turned, {}), [1, 2])).toEqual([]);
    expect(askDrive(height, map(turned, {}), [-2, -1])).toHaveLength(1);
  });

  it('of the other direction it is not for us', () => {
    expect(levels(height, { 'traffic_sign:forward': 'DE:265' })).toEqual(['unknown']);
    expect(levels(height, { 'traffic_sign:backward': 'DE:265' })).toEqual([]);
    expect(levels(height, { 'traffic_sign:backward': 'DE:265' }, { backward: true })).toEqual(['unknown']);
    expect(levels(height, { 'hazard:backward': 'low_bridge' })).toEqual([]);
  });

  it.each([
    'city_limit',
    'maxspeed',
    'stop',
    'give_way',
    'DE:274[30]',
    'DE:274-30,1010-51',
    'DE:142-10',
    'DE:254;259',
    'DE:105-10',
    'DE:1004-30[200 m]',
    'DE:1026-36',
    '720',
    'GB:956',
    'GB:622.1A',
    'CH:2.14 "Ausgenommen Forstwirtschaft"',
    'US:R1-1',
    'no',
    'yes',
  ])('traffic_sign=%s limits no size', (text) => {
    expect(anything({ traffic_sign: text }, { country: 'DE' })).toEqual([]);
  });

  it.each(['wild_animals', 'children', 'uneven_road', 'curve', 'bump', 'flooding', 'animal_crossing', 'yes'])(
    'hazard=%s limits no size',
    (text) => {
      expect(anything({ hazard: text })).toEqual([]);
    },
  );

  it('a code without its country is one of the country it stands in', () => {
    expect(levels(height, { traffic_sign: '265[3]' }, { country: 'DE' })).toEqual(['unknown']);
    expect(levels(height, { traffic_sign: '265[3]' }, { country: 'GB' })).toEqual([]);
  });

  it('signs for goods vehicles count as far as they bind a motorhome', () => {
    const heavy = { ...COACHBUILT, grossKg: 4250 };
    expect(levels(mass, { traffic_sign: 'FR:B13' }, { card: heavy })).toEqual(['unknown']);
    expect(levels(mass, { traffic_sign: 'GB:622.1A' }, { card: heavy, country: 'GB' })).toEqual([]);
  });
});
