import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { directionOf } from '../../../geo/tags/driven.ts';
import { lanesDriven, laneValues, limitOnLanes, readLaneKey } from '../../../geo/tags/lanes.ts';
import { readLength } from '../../../geo/units/read-length.ts';

/** What a width limit does to a body 2.32 m wide. */
const bodyOf232 = (value: string) => {
  const read = readLength(value);
  if (read.kind === 'unreadable') return 'unreadable';
  return read.kind === 'value' && read.value < 2.32 ? 'binds' : 'free';
};

describe('a key about lanes', () => {
  it.each([
    ['maxwidth:lanes', 'maxwidth', undefined, false],
    ['maxheight:lanes:backward', 'maxheight', 'backward', false],
    ['motor_vehicle:lanes:forward:conditional', 'motor_vehicle', 'forward', true],
    ['maxwidth:physical:lanes', 'maxwidth:physical', undefined, false],
    ['maxweight:lanes:both_ways', 'maxweight', 'both_ways', false],
  ])('%s is about %s', (key, base, direction, conditional) => {
    expect(readLaneKey(key)).toEqual({ base, direction, conditional });
  });

  it.each([
    'turn:lanes',
    'change:lanes:forward',
    'destination:ref:lanes',
    'width:lanes',
    'lanes',
    'lanes:forward',
    'maxwidth',
    'maxspeed:lanes',
  ])('%s limits nobody', (key) => {
    expect(readLaneKey(key)).toBeUndefined();
  });

  it('speaks of the driven direction only', () => {
    const driven = (key: string, forward: boolean) => {
      const lanes = readLaneKey(key);
      return lanes !== undefined && lanesDriven(lanes, directionOf({ forward }));
    };
    expect(driven('maxheight:lanes:backward', true)).toBe(false);
    expect(driven('maxheight:lanes:backward', false)).toBe(true);
    expect(driven('maxheight:lanes', true)).toBe(true);
    expect(driven('maxheight:lanes:both_ways', true)).toBe(false);
  });
});

describe('a limit lane by lane', () => {
  it('2 m on the left lane of two leaves the right lane', () => {
    expect(limitOnLanes('2|none', undefined, bodyOf232)).toMatchObject({
      bound: 'some',
      boundLanes: 'the left lane',
      freeLanes: 'the right lane',
    });
  });

  it('an empty lane has the value of the key without lanes', () => {
    expect(laneValues('2||none', '2.2')).toEqual(['2', '2.2', 'none']);
    expect(limitOnLanes('2||none', '2.2', bodyOf232)).toMatchObject({
      boundLanes: 'lanes 1 and 2 of 3 from the left',
      freeLanes: 'the right lane',
    });
    expect(limitOnLanes('2||none', undefined, bodyOf232)).toMatchObject({ boundLanes: 'the left lane' });
  });

  it('on all lanes binds, on none does not', () => {
    expect(limitOnLanes('2|2.1', undefined, bodyOf232)).toMatchObject({
      bound: 'all',
      boundLanes: 'all 2 lanes',
      freeLanes: '',
    });
    expect(limitOnLanes('2', undefined, bodyOf232)).toMatchObject({
      bound: 'all',
      boundLanes: 'the only lane',
    });
    expect(limitOnLanes('3|none', undefined, bodyOf232)).toMatchObject({ bound: 'none', boundLanes: '' });
  });

  it('what cannot be read is never a free lane', () => {
    expect(limitOnLanes('wide|none', undefined, bodyOf232)).toMatchObject({
      bound: 'some',
      lanes: ['unreadable', 'free'],
    });
  });

  it('names the middle lane, and lanes of a broad road by number', () => {
    expect(limitOnLanes('none|2|none', undefined, bodyOf232).boundLanes).toBe('the middle lane');
    expect(limitOnLanes('none|2|none|none', undefined, bodyOf232).boundLanes).toBe(
      'lane 2 of 4 from the left',
    );
    expect(limitOnLanes('2|2|none|2', undefined, bodyOf232).boundLanes).toBe(
      'lanes 1, 2 and 4 of 4 from the left',
    );
  });

  it('any text has one reading per lane', () => {
    fc.assert(
      fc.property(
        fc.string(),
        (text) => limitOnLanes(text, undefined, bodyOf232).lanes.length === text.split('|').length,
      ),
    );
  });
});
