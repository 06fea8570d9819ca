import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../geo/roads/roads.ts';
import { RULES } from '../../../geo/rules/index.ts';
import { ask, COACHBUILT } from '../../support/ask.ts';
import { driveOn, type Step, type TestWay, testMap } from '../../support/drive-on.ts';

/** Every kind of bar at once. */
const FORBIDDING: Tags = {
  maxheight: '2',
  'maxheight:physical': '2',
  maxwidth: '1.8',
  'maxwidth:physical': '1.8',
  maxlength: '5',
  maxweight: '2',
  maxweightrating: '2',
  maxaxleload: '1',
  motor_vehicle: 'no',
  'maxheight:conditional': '2 @ (wet)',
  'maxwidth:lanes': '1|1',
  maxgcweight: '2',
};

const DRIVEN: TestWay = { id: 1, nodes: ['0,0', '2,0', '5,0'], tags: { highway: 'secondary' } };

function everything(ways: readonly TestWay[], steps: readonly Step[], nodeTags: Record<string, Tags> = {}) {
  const roads = testMap(ways, nodeTags);
  const drive = driveOn(roads, steps);
  return RULES.flatMap((subject) => ask(subject, roads, drive, COACHBUILT));
}

describe('only what is driven counts', () => {
  it('and on the driven road all of it does', () => {
    const found = everything([{ ...DRIVEN, tags: { ...DRIVEN.tags, ...FORBIDDING } }], [1]);
    expect([...new Set(found.map((finding) => finding.subject))].sort()).toEqual(
      ['access', 'axle', 'height', 'length', 'map', 'mass', 'width'].sort(),
    );
    expect(found.filter((finding) => finding.level === 'barred').length).toBeGreaterThanOrEqual(4);
  });

  it.each<[string, TestWay]>([
    [
      'the bridge above',
      {
        id: 2,
        nodes: ['1,-1', '1,1'],
        tags: { highway: 'residential', bridge: 'yes', layer: '1', ...FORBIDDING },
      },
    ],
    [
      'the road beneath',
      {
        id: 2,
        nodes: ['1,-1', '1,1'],
        tags: { highway: 'residential', tunnel: 'yes', layer: '-1', ...FORBIDDING },
      },
    ],
    [
      'the parallel service road',
      { id: 2, nodes: ['0,0.1', '2,0.1', '5,0.1'], tags: { highway: 'service', ...FORBIDDING } },
    ],
    [
      'the other carriageway',
      { id: 2, nodes: ['5,0.1', '0,0.1'], tags: { highway: 'secondary', oneway: 'yes', ...FORBIDDING } },
    ],
    [
      'the road that joins at a junction',
      { id: 2, nodes: ['2,0', '2,2'], tags: { highway: 'residential', ...FORBIDDING } },
    ],
    [
      'the road beyond the end',
      { id: 2, nodes: ['5,0', '7,0'], tags: { highway: 'secondary', ...FORBIDDING } },
    ],
    [
      'the railway',
      { id: 2, nodes: ['0,0.05', '5,0.05'], tags: { railway: 'rail', ...FORBIDDING }, around: true },
    ],
    [
      'the canal',
      { id: 2, nodes: ['1,-1', '1,1'], tags: { waterway: 'canal', ...FORBIDDING }, around: true },
    ],
  ])('%s does not', (_, other) => {
    expect(everything([DRIVEN, other], [1])).toEqual([]);
  });

  it('the opposite direction’s limits do not', () => {
    const backward = Object.fromEntries(
      ['maxheight', 'maxwidth', 'maxlength', 'maxweight', 'maxaxleload', 'motor_vehicle'].map((key) => [
        `${key}:backward`,
        key === 'motor_vehicle' ? 'no' : '1',
      ]),
    );
    const ways = [{ ...DRIVEN, tags: { ...DRIVEN.tags, ...backward } }];
    expect(everything(ways, [1])).toEqual([]);
    expect(everything(ways, [-1]).length).toBeGreaterThanOrEqual(5);
  });

  it('a node beside the road, or a lift or sea mark on it, does not', () => {
    const other: TestWay = { id: 2, nodes: ['1,1', '1,2', '1,3'], tags: { highway: 'residential' } };
    expect(everything([DRIVEN, other], [1], { '1,2': { barrier: 'bollard', ...FORBIDDING } })).toEqual([]);
    expect(everything([DRIVEN], [1], { '2,0': { highway: 'elevator', ...FORBIDDING } })).toEqual([]);
    expect(everything([DRIVEN], [1], { '2,0': { 'seamark:type': 'bridge', ...FORBIDDING } })).toEqual([]);
  });

  it('findings of every subject have ids of their own and stand in driving order', () => {
    const ways = [
      { ...DRIVEN, tags: { ...DRIVEN.tags, ...FORBIDDING } },
      {
        id: 2,
        nodes: ['5,0', '9,0'],
        tags: { highway: 'track', maxheight: 'low', motorcar: 'no', oneway: '-1' },
      },
    ];
    const found = everything(ways, [1, 2], { '2,0': { barrier: 'gate', maxheight: '2' } });
    expect(new Set(found.map((finding) => finding.id)).size).toBe(found.length);
    for (const subject of new Set(found.map((finding) => finding.subject))) {
      const places = found.filter((finding) => finding.subject === subject).map((finding) => finding.fromM);
      if (subject !== 'map') expect(places).toEqual([...places].sort((a, b) => a - b));
    }
  });
});
