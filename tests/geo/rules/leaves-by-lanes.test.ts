import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../geo/roads/roads.ts';
import { width } from '../../../geo/rules/limits/width.ts';
import { askDrive } from '../../support/ask.ts';
import { testMap } from '../../support/drive-on.ts';

/** A carriageway (1) in two pieces, which goes on (3) where a slip road leaves to the right (4). */
function carriageway(tags: Tags) {
  const main = { highway: 'trunk', oneway: 'yes' };
  return testMap([
    { id: 1, nodes: ['0,0', '3,0'], tags: { ...main, ...tags } },
    { id: 2, nodes: ['3,0', '6,0'], tags: { ...main, ...tags } },
    { id: 3, nodes: ['6,0', '9,0'], tags: main },
    { id: 4, nodes: ['6,0', '9,-0.6'], tags: { highway: 'trunk_link', oneway: 'yes' } },
  ]);
}

const levels = (tags: Tags, steps: number[]) =>
  askDrive(width, carriageway(tags), steps).map(({ level, kind, wants }) =>
    [level, kind, wants].filter((part) => part !== undefined).join(' '),
  );

describe('a limit on one lane of several', () => {
  it('asks for care where the drive goes on, whichever lane it is', () => {
    expect(levels({ 'maxwidth:lanes': 'none|2' }, [1, 2, 3])).toEqual(['care lane']);
    expect(levels({ 'maxwidth:lanes': '2|none' }, [1, 2, 3])).toEqual(['care lane']);
  });

  it('is unknown where the drive leaves by that lane, and wants the sign read', () => {
    expect(levels({ 'maxwidth:lanes': 'none|2' }, [1, 2, 4])).toEqual(['unknown lane sign']);
  });

  it('asks for care where the drive leaves by the other', () => {
    expect(levels({ 'maxwidth:lanes': '2|none' }, [1, 2, 4])).toEqual(['care lane']);
  });

  it('is judged by the arrows where they are mapped', () => {
    const arrows = { 'maxwidth:lanes': 'none|none|2', 'turn:lanes': 'through|through;right|right' };
    expect(levels(arrows, [1, 2, 4])).toEqual(['care lane']);
    const only = { 'maxwidth:lanes': 'none|2|2', 'turn:lanes': 'through|right|right' };
    expect(levels(only, [1, 2, 4])).toEqual(['unknown lane sign']);
    const straight = { 'maxwidth:lanes': '2|none', 'turn:lanes': 'through|right' };
    expect(levels(straight, [1, 2, 3])).toEqual(['unknown lane sign']);
  });

  it('asks for care where the drive ends before any road leaves', () => {
    expect(levels({ 'maxwidth:lanes': 'none|2' }, [1])).toEqual(['care lane']);
  });
});

describe('a road driven against its drawn order, and roads that leave to the left', () => {
  /** A two-way road (1) drawn from east to west, driven eastwards; it forks into 2 and 3. */
  const fork = (tags: Tags, two: string, three: string) =>
    testMap([
      { id: 1, nodes: ['3,0', '0,0'], tags: { highway: 'primary', lanes: '4', ...tags } },
      { id: 2, nodes: ['3,0', two], tags: { highway: 'primary' } },
      { id: 3, nodes: [three, '3,0'], tags: { highway: 'primary' } },
    ]);
  const said = (map: ReturnType<typeof fork>, steps: number[]) =>
    askDrive(width, map, steps).map(({ level, kind, wants }) =>
      [level, kind, wants].filter(Boolean).join(' '),
    );

  it('is left by its leftmost lane where the drive turns left', () => {
    const limit = { 'maxwidth:lanes:backward': '2|none' };
    expect(said(fork(limit, '3,3', '6,0'), [-1, 2])).toEqual(['unknown lane sign']);
    expect(said(fork({ 'maxwidth:lanes:backward': 'none|2' }, '3,3', '6,0'), [-1, 2])).toEqual(['care lane']);
  });

  it('is left by its right where another road bears less far from straight on', () => {
    // the drive bears a little to the right, the other goes straight on
    expect(said(fork({ 'maxwidth:lanes:backward': 'none|2' }, '6,-0.5', '6,0'), [-1, 2])).toEqual([
      'unknown lane sign',
    ]);
    expect(said(fork({ 'maxwidth:lanes:backward': 'none|2' }, '6,0.5', '6,0'), [-1, 2])).toEqual([
      'care lane',
    ]);
    expect(said(fork({ 'maxwidth:lanes:backward': 'none|2' }, '3,-3', '6,0'), [-1, 2])).toEqual([
      'unknown lane sign',
    ]);
  });

  it('goes by the arrows of its own direction, and by none that name other lanes', () => {
    const arrows = { 'maxwidth:lanes:backward': 'none|2', 'turn:lanes:backward': 'left|through' };
    expect(said(fork(arrows, '3,3', '6,0'), [-1, 2])).toEqual(['care lane']);
    const others = { 'maxwidth:lanes:backward': '2|none', 'turn:lanes:backward': 'through|through' };
    expect(said(fork(others, '3,3', '6,0'), [-1, 2])).toEqual(['unknown lane sign']);
  });
});
