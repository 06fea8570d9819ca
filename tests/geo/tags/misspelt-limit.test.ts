import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../geo/roads/roads.ts';
import { map } from '../../../geo/rules/road/map.ts';
import { readLimitKey } from '../../../geo/tags/limit-key.ts';
import { limitMeant } from '../../../geo/tags/misspelt-limit.ts';
import { askNode, askRoad } from '../../support/ask.ts';

const levels = (tags: Tags) => askRoad(map, tags).map(({ level }) => level);

describe('a limit under a misspelt key', () => {
  it.each([
    ['MaxHeight', 'maxheight'],
    ['maxhieght', 'maxheight'],
    ['maxheigth', 'maxheight'],
    ['maxhight', 'maxheight'],
    ['max-height', 'maxheight'],
    ['max_height', 'maxheight'],
    ['max_weight', 'maxweight'],
    ['maxwieght', 'maxweight'],
    ['maxwidht', 'maxwidth'],
    ['MAXWIDTH', 'maxwidth'],
    ['maxlenght', 'maxlength'],
    ['amxweight', 'maxweight'],
    ['naxheight', 'maxheight'],
    [' axheight', 'maxheight'],
    ['axwidth', 'maxwidth'],
  ])('%s is unknown, with the text as mapped', (key, meant) => {
    expect(limitMeant(key)).toBe(meant);
    const [finding, ...more] = askRoad(map, { [key]: '2.5' });
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ level: 'unknown', subject: 'map', tags: { [key]: '2.5' } });
    expect(finding?.say).toBe(`"${key}=2.5": no limit has that name; ${meant} may be meant.`);
  });

  it('is unknown on a gate, and with a direction or a condition behind it', () => {
    expect(askNode(map, { barrier: 'gate', MaxWidth: '2.1' })[0]?.level).toBe('unknown');
    expect(levels({ 'maxhieght:physical': '3' })).toEqual(['unknown']);
    expect(levels({ 'Maxweight:conditional': '3 @ wet' })).toEqual(['unknown']);
    expect(levels({ 'maxhieght:backward': '3' })).toEqual([]);
    expect(levels({ 'maxhieght:source': 'sign' })).toEqual([]);
  });

  it.each([
    'maxheight',
    'maxspeed',
    'maxspeed:type',
    'maxstay',
    'maxdepth',
    'maxdraft',
    'minheight',
    'min_height',
    'minweight',
    'motorcar',
    'motor_vehicle',
    'mtb:scale',
    'material',
    'man_made',
    'smoothness',
    'width',
    'height',
  ])('%s is no such slip', (key) => {
    expect(limitMeant(key.split(':')[0] ?? '')).toBeUndefined();
    expect(levels({ [key]: '3' })).toEqual([]);
  });
});

it('a limit in capital letters is told as the one meant, a recommended one advises', () => {
  expect(readLimitKey('MaxHeight', 'forward')?.meant).toBe('maxheight');
  expect(readLimitKey('maxheight:recommended', 'forward')?.basis).toBe('advisory');
  expect(readLimitKey('maxheight:advisory', 'forward')?.basis).toBe('advisory');
});
