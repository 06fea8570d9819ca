import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../geo/roads/roads.ts';
import type { Quantity } from '../../../geo/tags/limit-key.ts';
import { limitClaims } from '../../../geo/tags/limits.ts';

const ALL: readonly Quantity[] = [
  'height',
  'width',
  'length',
  'mass',
  'plateMass',
  'unladenMass',
  'axle',
  'bogie',
  'unknown',
];

/** Each limit found, as `key binding`. */
function found(tags: Tags, forward = true): string[] {
  return limitClaims({ tags, forward }, ALL).map((claim) => `${claim.key} ${claim.binding}`);
}

describe('the limits of a way', () => {
  it('are read in metres and kilograms, legal and physical told apart', () => {
    const claims = limitClaims(
      {
        tags: { maxheight: '3.5', 'maxheight:physical': '3.7', maxweight: '7.5', name: 'Low Street' },
        forward: true,
      },
      ALL,
    );
    expect(claims).toMatchObject([
      { key: 'maxheight', quantity: 'height', basis: 'legal', reading: { kind: 'value', value: 3.5 } },
      { key: 'maxheight:physical', quantity: 'height', basis: 'physical', reading: { value: 3.7 } },
      { key: 'maxweight', quantity: 'mass', basis: 'legal', reading: { value: 7500 } },
    ]);
  });

  it('of each kind are known', () => {
    const quantityOf = (key: string) =>
      limitClaims({ tags: { [key]: '3' }, forward: true }, ALL)[0]?.quantity;
    expect(quantityOf('maxwidth')).toBe('width');
    expect(quantityOf('maxlength')).toBe('length');
    expect(quantityOf('maxweightrating')).toBe('plateMass');
    expect(quantityOf('maxunladenweight')).toBe('unladenMass');
    expect(quantityOf('maxaxleload')).toBe('axle');
    expect(quantityOf('maxbogieweight')).toBe('bogie');
  });

  it('of the other direction do not bind', () => {
    const tags = { 'maxheight:forward': '3', 'maxheight:backward': '4' };
    expect(found(tags, true)).toEqual(['maxheight:forward always']);
    expect(found(tags, false)).toEqual(['maxheight:backward always']);
    expect(found({ 'maxheight:lanes:backward': '|2.5' }, true)).toEqual([]);
    expect(found({ 'maxweight:backward:conditional': '3 @ wet' }, true)).toEqual([]);
  });

  it('give way to a more specific form: direction over none, motorhome over motor vehicle over all', () => {
    expect(found({ maxheight: '4', 'maxheight:forward': '3' })).toEqual(['maxheight:forward always']);
    expect(found({ maxweight: '3', 'maxweight:motor_vehicle': '5', 'maxweight:motorhome': 'none' })).toEqual([
      'maxweight:motorhome always',
    ]);
    expect(found({ 'maxweight:forward': '3', 'maxweight:vehicle': '5' })).toEqual([
      'maxweight:vehicle always',
    ]);
  });

  it('that are legal do not give way to physical ones', () => {
    expect(found({ maxheight: '4', 'maxheight:physical:forward': '3' })).toHaveLength(2);
  });

  it.each([
    'maxweight:bus',
    'maxlength:psv',
    'maxheight:caravan',
    'maxweight:trailer',
    'maxweightrating:bus',
    'maxheight:motorcycle',
    'bus:maxheight',
  ])('said of other vehicles (%s) are none', (key) => {
    expect(found({ [key]: '2' })).toEqual([]);
  });

  it.each(['maxweight:hgv', 'maxweightrating:goods', 'maxlength:hgv_articulated', 'hgv:maxweight'])(
    'said of goods vehicles (%s) are kept apart for the country to judge',
    (key) => {
      expect(found({ [key]: '3' })).toEqual([`${key} goods`]);
    },
  );

  it.each([
    'maxheight:source',
    'source:maxheight',
    'maxheight:note',
    'note:maxheight',
    'maxheight:signed',
    'maxweight:signed',
    'maxheight_referencelevel',
    'maxweight:mlc:oneway',
    'maxweight:mlc:hgv:both',
    'maxweight:mlc:tank:oneway',
    'maxweight:except',
    'maxspeed',
    'maxspeed:hgv:conditional',
    'maxspeed:lanes',
    'maxstay',
    'parking:right:maxheight',
    'proposed:maxheight',
    'disused:maxheight',
    'seamark:bridge:maxheight',
    'width',
    'est_width',
    'turn:lanes',
    'destination:lanes',
  ])('are not %s', (key) => {
    expect(found({ [key]: '2' })).toEqual([]);
  });

  it.each([
    ['maxheight:conditional', 'condition'],
    ['maxweight:motorhome:conditional', 'condition'],
    ['maxheight:lanes:conditional', 'condition'],
    ['maxwidth:lanes', 'lane'],
    ['maxheight:lanes:forward', 'lane'],
    ['maxheight:left', 'notUnderstood'],
    ['maxweight:destination', 'notUnderstood'],
    ['motorhome:maxheight', 'notUnderstood'],
    ['maxgcweight', 'notUnderstood'],
    ['max_height', 'notUnderstood'],
    ['maxheight_physical', 'notUnderstood'],
    ['maxaxles', 'notUnderstood'],
  ])('that are not settled are told: %s (%s)', (key, binding) => {
    expect(found({ [key]: '2' })).toEqual([`${key} ${binding}`]);
  });

  it('for both ways is the plain key in other words; of the two the lower binds', () => {
    const both = { 'maxheight:both_ways': '3' };
    expect(found(both)).toEqual(['maxheight:both_ways always']);
    expect(found({ maxheight: '4', ...both })).toEqual(['maxheight:both_ways always']);
    expect(found({ maxheight: '2.5', ...both })).toEqual(['maxheight always']);
    expect(found({ 'maxheight:both_ways:conditional': '3 @ (Sa)' })).toEqual([
      'maxheight:both_ways:conditional condition',
    ]);
  });

  it('stay beside the plain form when not settled', () => {
    expect(found({ maxheight: '4', 'maxheight:conditional': '3 @ wet' })).toEqual([
      'maxheight always',
      'maxheight:conditional condition',
    ]);
  });

  it('of a bridge with sea marks are for boats, its mass limit is for the road', () => {
    expect(found({ maxheight: '4.9', maxwidth: '11', maxweight: '12', 'seamark:type': 'bridge' })).toEqual([
      'maxweight always',
    ]);
  });
});

describe('of two figures for one limit', () => {
  const read = (tags: Record<string, string>) =>
    limitClaims({ tags, forward: true }, ['height']).map(({ key }) => key);
  it('the lower holds, and what cannot be read might be lower yet', () => {
    expect(read({ maxheight: '3.5', 'maxheight:both_ways': '3.2' })).toEqual(['maxheight:both_ways']);
    expect(read({ maxheight: '3.2', 'maxheight:both_ways': '3.5' })).toEqual(['maxheight']);
    expect(read({ maxheight: '3.2', 'maxheight:both_ways': 'low' })).toEqual(['maxheight:both_ways']);
    expect(read({ maxheight: 'low', 'maxheight:both_ways': '3.2' })).toEqual(['maxheight']);
    expect(read({ maxheight: 'none', 'maxheight:both_ways': '3.2' })).toEqual(['maxheight:both_ways']);
    expect(read({ maxheight: '3.2', 'maxheight:both_ways': 'none' })).toEqual(['maxheight']);
    expect(read({ maxheight: 'below_default', 'maxheight:both_ways': '3.2' })).toEqual(['maxheight']);
    expect(read({ maxheight: '3.2', 'maxheight:both_ways': 'below_default' })).toEqual([
      'maxheight:both_ways',
    ]);
  });

  it('a legal height is no form of a physical one: both are told', () => {
    expect(read({ maxheight: '3.5', 'maxheight:legal': '4' })).toEqual(['maxheight', 'maxheight:legal']);
  });
});
