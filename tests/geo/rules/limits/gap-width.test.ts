import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { width } from '../../../../geo/rules/limits/width.ts';
import { crossing } from '../../../../geo/rules/road/crossing.ts';
import { askNode, askRoad, COACHBUILT } from '../../../support/ask.ts';

const GATE = { barrier: 'gate', motor_vehicle: 'yes' };
const levels = (tags: Tags) => askNode(width, tags).map(({ level }) => level);

// the vehicle is 2.30 m, 2.40 m over folded and 2.75 m over unfolded mirrors
describe('a width mapped on a node of the driven road', () => {
  it.each<[string, Tags]>([
    ['a gate', GATE],
    ['a gate that may be shut', { barrier: 'lift_gate' }],
    ['a cattle grid', { barrier: 'cattle_grid' }],
    ['an entrance through a wall', { barrier: 'entrance' }],
    ['a toll booth', { barrier: 'toll_booth' }],
    ['a choker', { traffic_calming: 'choker' }],
    ['a chicane', { traffic_calming: 'chicane' }],
    ['an island', { traffic_calming: 'island' }],
    ['a narrowing', { narrow: 'yes' }],
    ['a ford', { ford: 'yes' }],
    ['a level crossing', { railway: 'level_crossing' }],
    ['nothing else', { source: 'survey' }],
  ])('on %s: narrower than the vehicle is unknown, hardly wider tight, wide enough nothing', (_, tags) => {
    for (const key of ['width', 'est_width']) {
      expect(levels({ ...tags, [key]: '2.35' })).toEqual(['unknown']);
      expect(levels({ ...tags, [key]: '2.7' })).toEqual(['tight']);
      expect(levels({ ...tags, [key]: '2.85' })).toEqual(['tight']);
      expect(levels({ ...tags, [key]: '2.9' })).toEqual([]);
    }
    expect(levels({ ...tags, width: 'narrow' })).toEqual(['unknown']);
  });

  it('says what is mapped and what the vehicle needs', () => {
    const [found] = askNode(width, { ...GATE, width: '2.3' });
    expect(found).toMatchObject({
      subject: 'width',
      tags: { barrier: 'gate', width: '2.3' },
      limit: { value: 2.3, unit: 'm', asMapped: '2.3' },
      spare: -0.1,
    });
    expect(found?.say).toBe(
      `"width=2.3" is mapped on a gate; the width over folded mirrors is 2.40 m (7'10½"): 0.10 m too wide, if that is the gap.`,
    );
    expect(askNode(width, { traffic_calming: 'choker', est_width: '2.8' })[0]?.say).toBe(
      `"est_width=2.8" (an estimate) is mapped on a choker; over the mirrors the vehicle is 2.75 m (9'1"): 0.05 m spare in all.`,
    );
  });

  it('a physical width anywhere is held as the gap it is', () => {
    expect(levels({ traffic_calming: 'choker', 'maxwidth:physical': '2.3' })).toEqual(['barred']);
    expect(levels({ ...GATE, 'maxwidth:physical': '2.3', width: '2.3' })).toEqual(['barred']);
    expect(levels({ ...GATE, maxwidth: '3.5', width: '2.3' })).toEqual([]);
  });

  it.each<[string, Tags]>([
    ['a crossing for walkers', { highway: 'crossing', crossing: 'zebra' }],
    ['traffic lights', { highway: 'traffic_signals' }],
    ['a hump', { traffic_calming: 'hump' }],
    ['a kerb', { barrier: 'kerb' }],
    ['a street lamp', { highway: 'street_lamp' }],
    ['a tree', { natural: 'tree' }],
    ['a bus stop', { public_transport: 'stop_position' }],
    ['a bollard that opens', { barrier: 'bollard', motor_vehicle: 'yes' }],
  ])('on %s is its own width, and no gap', (_, tags) => {
    expect(levels({ ...tags, width: '0.4' })).toEqual([]);
  });

  it('on a bollard nobody opens is left to the barrier', () => {
    expect(levels({ barrier: 'bollard', width: '2.0' })).toEqual([]);
    expect(levels({ barrier: 'bollard', motor_vehicle: 'yes', width: '2.0' })).toEqual(['unknown']);
  });
});

describe('a narrowing made to slow traffic', () => {
  it('tells the width left where it is mapped', () => {
    const says = (tags: Tags) => askNode(crossing, { traffic_calming: 'choker', ...tags })[0]?.say;
    expect(says({})).toBe('A narrowing; the width left is not mapped.');
    expect(says({ width: '3.5' })).toBe('A narrowing, mapped 3.50 m wide.');
    expect(says({ 'maxwidth:physical': '3.5' })).toBe('A narrowing, mapped 3.50 m wide.');
    expect(says({ width: 'narrow' })).toBe('A narrowing; the width left is not mapped.');
    const road = askRoad(crossing, { traffic_calming: 'choker', width: '3.2' })[0]?.say;
    expect(road).toBe('A narrowing, mapped 3.20 m wide.');
  });
});

it('of a vehicle whose mirrors fold within its body the body’s width decides', () => {
  const card = { ...COACHBUILT, widthMirrorsFoldedM: 2.3 };
  expect(askNode(width, { ...GATE, width: '2.2' }, { card })[0]).toMatchObject({
    level: 'unknown',
    vehicle: { value: 2.3, what: 'body width' },
  });
});
