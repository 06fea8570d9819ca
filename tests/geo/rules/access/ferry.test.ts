import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { ferry } from '../../../../geo/rules/access/ferry.ts';
import { length } from '../../../../geo/rules/limits/length.ts';
import { askDrive, askRoad, COACHBUILT } from '../../../support/ask.ts';
import { testMap } from '../../../support/drive-on.ts';

const cross = (tags: Tags, card = COACHBUILT) =>
  askDrive(
    ferry,
    testMap([{ id: 1, nodes: ['0,0', '9,0'], tags: { route: 'ferry', motor_vehicle: 'yes', ...tags } }]),
    [1],
    card,
  ).map(({ subject, kind, level }) => `${subject === 'ferry' ? '' : subject}${kind} ${level}`);

describe('a ferry on the drive', () => {
  it('without a length limit: the length is unknown, with what to book; the ramp is care', () => {
    expect(cross({})).toEqual(['to book unknown', 'ramp care']);
    const map = testMap([{ id: 1, nodes: ['0,0', '9,0'], tags: { route: 'ferry', name: 'Reed Ferry' } }]);
    const [length] = askDrive(ferry, map, [1], {
      ...COACHBUILT,
      rack: { lengthM: 0.6, widthM: 1.5, fitted: true },
    });
    expect(length?.say).toMatch(/The ferry Reed Ferry/);
    expect(length?.advice).toMatch(/7\.60 m long, 3\.05 m high/);
  });

  it('with a length limit that subject speaks, or none needs to', () => {
    expect(cross({ maxlength: '12' })).toEqual(['ramp care']);
  });

  it('too short for the vehicle with its rack says whether it would do without', () => {
    const rack = { lengthM: 0.6, widthM: 1.5, fitted: true };
    const advice = (tags: Tags, fitted = true) =>
      askDrive(length, testMap([{ id: 1, nodes: ['0,0', '9,0'], tags }]), [1], {
        ...COACHBUILT,
        rack: { ...rack, fitted },
      })[0]?.advice;
    const crossing = { route: 'ferry', motor_vehicle: 'yes' };
    expect(advice({ ...crossing, maxlength: '7.2' })).toBe(
      'Take the rack off (without it the vehicle is 7.00 m (23\'0")), or book another crossing.',
    );
    expect(advice({ ...crossing, maxlength: '6' })).toBe('Book another crossing.');
    expect(advice({ highway: 'residential', maxlength: '7.2' })).toMatch(
      /^Take the rack off .*another road\.$/,
    );
    expect(advice({ highway: 'residential', maxlength: '6' }, false)).toBe('Take another road.');
  });

  it('the ramp’s break is told beside what the tail clears', () => {
    const map = testMap([{ id: 1, nodes: ['0,0', '9,0'], tags: { route: 'ferry' } }]);
    const say = (card: typeof COACHBUILT) =>
      askDrive(ferry, map, [1], card).find(({ kind }) => kind === 'ramp')?.say;
    expect(say({ ...COACHBUILT, rearClearanceM: 0.3 })).toMatch(/clears a break of 1 in 7 \(8\.3°\)/);
    expect(say(COACHBUILT)).toMatch(/does not give the clearance/);
  });

  it('gas on board is to be shut and declared', () => {
    expect(cross({}, { ...COACHBUILT, gasKg: 22 })).toEqual(['gas care', 'to book unknown', 'ramp care']);
  });

  it('a road is no ferry, and two pieces of one crossing are one', () => {
    expect(askRoad(ferry, {})).toEqual([]);
    const map = testMap([
      { id: 1, nodes: ['0,0', '9,0'], tags: { route: 'ferry' } },
      { id: 2, nodes: ['9,0', '20,0'], tags: { route: 'ferry' } },
    ]);
    expect(askDrive(ferry, map, [1, 2])).toHaveLength(2);
  });
});
