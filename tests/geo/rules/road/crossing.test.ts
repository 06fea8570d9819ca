import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { crossing } from '../../../../geo/rules/road/crossing.ts';
import { askDrive, askNode, askRoad, COACHBUILT } from '../../../support/ask.ts';
import { testMap } from '../../../support/drive-on.ts';

const said = (tags: Tags) =>
  askNode(crossing, tags).map(({ level, folded }) => `${level}${folded ? ' folded' : ''}`);

describe('level crossings', () => {
  it('one is care, and asks for room beyond it', () => {
    const [found] = askNode(crossing, { railway: 'level_crossing' });
    expect(found).toMatchObject({ level: 'care', subject: 'crossing' });
    expect(found?.fromM).toBe(found?.toM);
    expect(found?.advice).toMatch(/room for 7\.0 m/);
  });

  it('the tail’s clearance is told where the card gives it', () => {
    const [found] = askNode(
      crossing,
      { railway: 'level_crossing' },
      { card: { ...COACHBUILT, rearClearanceM: 0.28 } },
    );
    expect(found?.say).toMatch(/the tail clears 1 in 8 \(7\.7°\)/);
  });

  it('behind barriers on a main road it is counted only', () => {
    const on = (highway: string, tags: Tags) => {
      const map = testMap([{ id: 1, nodes: ['0,0', '2,0', '5,0'], tags: { highway } }], {
        '2,0': { railway: 'level_crossing', ...tags },
      });
      return askDrive(crossing, map, [1]).map(({ folded }) => folded ?? false);
    };
    expect(on('primary', { 'crossing:barrier': 'full' })).toEqual([true]);
    expect(on('primary', { 'crossing:barrier': 'no' })).toEqual([false]);
    expect(on('primary', {})).toEqual([false]);
    expect(on('unclassified', { 'crossing:barrier': 'half' })).toEqual([false]);
  });

  it('two tracks are one crossing, tram tracks are counted only, walkers’ crossings are none', () => {
    const map = testMap(
      [{ id: 1, nodes: ['0,0', '2,0', '2.1,0', '5,0'], tags: { highway: 'residential' } }],
      {
        '2,0': { railway: 'level_crossing' },
        '2.1,0': { railway: 'level_crossing' },
      },
    );
    const found = askDrive(crossing, map, [1]);
    expect(found.map(({ say }) => say)).toEqual([expect.stringMatching(/over 2 tracks/)]);
    expect(said({ railway: 'tram_level_crossing' })).toEqual(['care folded']);
    expect(said({ railway: 'crossing' })).toEqual([]);
    expect(said({ highway: 'crossing' })).toEqual([]);
  });
});

describe('humps, dips and narrowings', () => {
  it.each(['hump', 'bump', 'dip', 'chicane', 'choker'])(
    'a %s is care, as a node or a way',
    (traffic_calming) => {
      expect(said({ traffic_calming })).toEqual(['care']);
      expect(askRoad(crossing, { traffic_calming })).toMatchObject([{ level: 'care', subject: 'crossing' }]);
    },
  );

  it.each(['table', 'cushion', 'rumble_strip'])('a %s is counted only', (traffic_calming) => {
    expect(said({ traffic_calming })).toEqual(['care folded']);
  });

  it.each(['island', 'painted_table', 'no', 'yes', 'constructor'])('%s is none', (traffic_calming) => {
    expect(said({ traffic_calming })).toEqual([]);
  });

  it('a table is shown to a tail that clears less than its ramp', () => {
    const long = { ...COACHBUILT, rearClearanceM: 0.2 };
    expect(askNode(crossing, { traffic_calming: 'table' }, { card: long })[0]).toMatchObject({
      say: expect.stringMatching(/The tail clears 1 in 11/),
    });
    expect(askNode(crossing, { traffic_calming: 'table' }, { card: long })[0]?.folded).toBeUndefined();
  });

  it('the humps of one street are one finding that counts them', () => {
    const spots = ['1,0', '2,0', '3,0', '4,0'];
    const map = testMap(
      [{ id: 1, nodes: ['0,0', ...spots, '20,0'], tags: { highway: 'residential' } }],
      Object.fromEntries(spots.map((spot) => [spot, { traffic_calming: 'hump' }])),
    );
    const found = askDrive(crossing, map, [1]);
    expect(found.map(({ say }) => say)).toEqual(['4 humps within 300 m.']);
    expect(found[0]?.fromM).toBeCloseTo(100, 0);
    expect(found[0]?.toM).toBeCloseTo(400, 0);
  });

  it('one mapped for the other direction is not ours', () => {
    expect(said({ traffic_calming: 'choker', direction: 'backward' })).toEqual([]);
    expect(said({ traffic_calming: 'choker', direction: 'forward' })).toEqual(['care']);
    expect(said({ traffic_calming: 'choker', direction: 'both' })).toEqual(['care']);
  });
});

it('a level crossing tells how it is guarded where the map says that it has no barrier', () => {
  const guard = (tags: Tags) => askNode(crossing, { railway: 'level_crossing', ...tags })[0]?.say;
  expect(guard({ 'crossing:barrier': 'no', 'crossing:light': 'yes' })).toMatch(
    /^A level crossing with lights and no barrier\./,
  );
  expect(guard({ 'crossing:barrier': 'no' })).toMatch(/^A level crossing without a barrier\./);
  expect(guard({ 'crossing:barrier': 'full' })).toMatch(/^A level crossing\./);
});
