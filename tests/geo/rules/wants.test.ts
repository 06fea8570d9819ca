import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../geo/roads/roads.ts';
import { access } from '../../../geo/rules/access/access.ts';
import { barrier } from '../../../geo/rules/access/barrier.ts';
import { height } from '../../../geo/rules/limits/height.ts';
import { mass } from '../../../geo/rules/limits/mass.ts';
import { width } from '../../../geo/rules/limits/width.ts';
import type { SubjectRule } from '../../../geo/rules/rule.ts';
import { askNode, askRoad, COACHBUILT } from '../../support/ask.ts';

const HEAVY = { ...COACHBUILT, grossKg: 3850 };
const said = (rule: SubjectRule, tags: Tags, card = COACHBUILT) =>
  askRoad(rule, tags, { card }).map(({ level, wants }) => `${level} ${wants}`);
const saidOfNode = (rule: SubjectRule, tags: Tags) =>
  askNode(rule, tags).map(({ level, wants }) => `${level} ${wants}`);

describe('what is unknown says what would settle it', () => {
  it('a leave time, where it hangs on the hour alone', () => {
    expect(said(height, { 'maxheight:conditional': '3.0 @ (22:00-06:00)' })).toEqual(['unknown time']);
    expect(said(access, { 'motor_vehicle:conditional': 'no @ (Mo-Fr)' })).toEqual(['unknown time']);
    expect(saidOfNode(barrier, { barrier: 'bollard', 'access:conditional': 'yes @ (Sa)' })).toEqual([
      'unknown time',
    ]);
  });

  it('more than a leave time, where it hangs on more than the hour', () => {
    const both = '3 @ (22:00-06:00 AND delivery)';
    expect(said(mass, { 'maxweight:conditional': both }, HEAVY)).toEqual(['unknown permission']);
  });

  it('the sign there, where the map cannot be read or believed', () => {
    expect(said(height, { maxheight: 'low' })).toEqual(['unknown sign']);
    expect(said(height, { maxheight: '31' })).toEqual(['unknown sign']);
    expect(said(height, { 'maxheight:conditional': '3.0 @ (wet)' })).toEqual(['unknown sign']);
    expect(said(width, { 'maxwidth:odd': '2' })).toEqual(['unknown sign']);
    expect(said(access, { motor_vehicle: 'sometimes' })).toEqual(['unknown sign']);
    expect(said(access, { hgv: 'no' }, HEAVY)).toEqual(['unknown sign']);
  });

  it('a tape or a scale, where a figure is wanting', () => {
    expect(said(mass, { maxunladenweight: '3' })).toEqual(['unknown measure']);
    expect(said(access, { 'motor_vehicle:conditional': 'no @ (emptyweight>3)' })).toEqual([
      'unknown measure',
    ]);
    expect(saidOfNode(barrier, { barrier: 'height_restrictor' })).toEqual(['unknown measure']);
    expect(saidOfNode(width, { barrier: 'gate', width: '2.2' })).toEqual(['unknown measure']);
  });

  it('a permission, where somebody must let us in', () => {
    expect(said(access, { access: 'private' })).toEqual(['unknown permission']);
    expect(said(access, { motor_vehicle: 'delivery' })).toEqual(['unknown permission']);
    expect(saidOfNode(barrier, { barrier: 'gate' })).toEqual(['unknown permission']);
  });

  it('nothing, where it is barred, tight or asks for care', () => {
    for (const tags of [{ maxheight: '2.5' }, { maxheight: '3.2' }, { 'maxheight:lanes': '2.5|none' }])
      expect(askRoad(height, tags as Tags)[0]).not.toHaveProperty('wants');
  });
});
