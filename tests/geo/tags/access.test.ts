import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../geo/roads/roads.ts';
import { accessDoubts, accessFor } from '../../../geo/tags/access.ts';
import { readAccessValue } from '../../../geo/tags/access-value.ts';

const road = (tags: Tags): Tags => ({ highway: 'residential', ...tags });

/** The deciding meaning and key of a residential road driven forward. */
function decided(tags: Tags, forward = true): string {
  const access = accessFor({ tags, forward });
  return access.key === '' ? access.meaning : `${access.meaning} by ${access.key}`;
}

function doubts(tags: Tags, forward = true): string[] {
  return accessDoubts({ tags, forward }, accessFor({ tags, forward })).map(
    (doubt) => `${doubt.key} ${doubt.binding}`,
  );
}

describe('access for a motorhome', () => {
  it('is open on a plain road', () => {
    expect(decided(road({}))).toBe('open');
  });

  it('is decided by the most specific key', () => {
    expect(decided(road({ access: 'no' }))).toBe('no by access');
    expect(decided(road({ access: 'no', vehicle: 'yes' }))).toBe('open by vehicle');
    expect(decided(road({ vehicle: 'yes', motor_vehicle: 'destination' }))).toBe(
      'destination by motor_vehicle',
    );
    expect(decided(road({ motor_vehicle: 'no', motorhome: 'designated' }))).toBe('open by motorhome');
    expect(decided(road({ motor_vehicle: 'yes', motorhome: 'no' }))).toBe('no by motorhome');
  });

  it('for both ways is the plain key in other words; of the two the harder decides', () => {
    expect(decided(road({ 'motor_vehicle:both_ways': 'no' }))).toBe('no by motor_vehicle:both_ways');
    expect(decided(road({ 'access:both_ways': 'private' }), false)).toBe('private by access:both_ways');
    expect(decided(road({ vehicle: 'yes', 'vehicle:both_ways': 'no' }))).toBe('no by vehicle:both_ways');
    expect(decided(road({ vehicle: 'no', 'vehicle:both_ways': 'yes' }))).toBe('no by vehicle');
    expect(decided(road({ 'vehicle:both_ways': 'no', 'vehicle:forward': 'yes' }))).toBe(
      'open by vehicle:forward',
    );
    expect(doubts(road({ 'motorcar:both_ways': 'no' }))).toEqual(['motorcar:both_ways motorcar']);
  });

  it('in one direction is decided by that direction, within the same key', () => {
    const tags = road({ vehicle: 'yes', 'vehicle:backward': 'no' });
    expect(decided(tags, true)).toBe('open by vehicle');
    expect(decided(tags, false)).toBe('no by vehicle:backward');
    expect(decided(road({ 'vehicle:backward': 'no', motor_vehicle: 'yes' }), false)).toBe(
      'open by motor_vehicle',
    );
  });

  it.each(['hgv', 'goods', 'tourist_bus', 'caravan', 'bicycle', 'psv', 'motorcycle', 'bus', 'trailer'])(
    'is not decided by %s=no',
    (key) => {
      expect(decided(road({ [key]: 'no' }))).toBe('open');
    },
  );

  it.each([
    'footway',
    'cycleway',
    'pedestrian',
    'path',
    'steps',
    'bridleway',
    'busway',
    'construction',
    'proposed',
  ])('is closed on a %s', (highway) => {
    expect(decided({ highway })).toBe('no by highway');
    expect(decided({ highway, motor_vehicle: 'yes' })).toBe('open by motor_vehicle');
    expect(decided({ highway, vehicle: 'destination' })).toBe('destination by vehicle');
    expect(decided({ highway, access: 'no' })).toBe('no by highway');
  });

  it('on a footway is not settled by a general access=yes or by motorcar=yes', () => {
    expect(decided({ highway: 'footway', access: 'yes' })).toBe('unknown by access');
    expect(decided({ highway: 'footway', access: 'private' })).toBe('no by highway');
    expect(decided({ highway: 'pedestrian', motorcar: 'destination' })).toBe('unknown by motorcar');
  });

  it('is not known on a class of road nobody documents', () => {
    expect(decided({ highway: 'layby' })).toBe('unknown by highway');
    expect(decided({ highway: 'layby', access: 'yes' })).toBe('open by access');
  });

  it('on a ferry must be mapped; a ferry for lorries takes motorhomes, one for cars may not', () => {
    expect(decided({ route: 'ferry' })).toBe('unknown by route');
    expect(decided({ route: 'ferry', motor_vehicle: 'yes' })).toBe('open by motor_vehicle');
    expect(decided({ route: 'ferry', motor_vehicle: 'no' })).toBe('no by motor_vehicle');
    expect(decided({ route: 'ferry', hgv: 'yes' })).toBe('open by hgv');
    expect(decided({ route: 'ferry', motorcar: 'yes' })).toBe('unknown by motorcar');
  });
});

describe('an access value', () => {
  it.each([
    ['yes', 'open'],
    ['designated', 'open'],
    ['permissive', 'open'],
    ['official', 'open'],
    ['no', 'no'],
    ['private', 'private'],
    ['permit', 'permit'],
    ['delivery', 'permit'],
    ['agricultural', 'permit'],
    ['forestry', 'permit'],
    ['agricultural;forestry', 'permit'],
    ['destination', 'destination'],
    ['customers', 'destination'],
    ['private;destination', 'destination'],
    ['discouraged', 'discouraged'],
    ['local', 'unknown'],
    ['', 'unknown'],
    ['Yes', 'unknown'],
    ['yes;perhaps', 'unknown'],
    ['toString', 'unknown'],
  ])('%s means %s', (text, meaning) => {
    expect(readAccessValue(text)).toBe(meaning);
  });
});

describe('access that is not settled', () => {
  it.each([
    ['motor_vehicle:conditional', 'condition'],
    ['access:forward:conditional', 'condition'],
    ['access:lanes', 'lane'],
    ['vehicle:lanes:forward', 'lane'],
    ['access:temporary', 'notUnderstood'],
    ['access:motor_vehicle', 'notUnderstood'],
    ['motorcar:conditional', 'condition'],
  ])('is told: %s', (key, binding) => {
    expect(doubts(road({ [key]: 'no' }))).toEqual([`${key} ${binding}`]);
  });

  it.each([
    'access:source',
    'access:note',
    'source:access',
    'access:bus',
    'access:N3',
    'bus:lanes',
    'bicycle:conditional',
    'turn:lanes',
    'access:backward:conditional',
    'access:lanes:backward',
    'motor_vehicle:backward',
  ])('is not %s', (key) => {
    expect(doubts(road({ [key]: 'no' }))).toEqual([]);
  });

  it('matters only where it is at least as specific as what decides', () => {
    expect(doubts(road({ motor_vehicle: 'yes', 'access:conditional': 'no @ wet' }))).toEqual([]);
    expect(doubts(road({ motor_vehicle: 'yes', 'motor_vehicle:conditional': 'no @ wet' }))).toHaveLength(1);
    expect(doubts(road({ access: 'no', 'motorhome:conditional': 'yes @ wet' }))).toHaveLength(1);
  });

  it('is motorcar=no where nothing is said of motor vehicles or motorhomes', () => {
    expect(doubts(road({ motorcar: 'no' }))).toEqual(['motorcar motorcar']);
    expect(doubts(road({ motorcar: 'no', access: 'yes' }))).toEqual(['motorcar motorcar']);
    expect(doubts(road({ motorcar: 'no', motor_vehicle: 'yes' }))).toEqual([]);
    expect(doubts(road({ motorcar: 'yes' }))).toEqual([]);
    expect(doubts(road({ motorcar: 'no', motorhome: 'yes' }))).toEqual([]);
  });
});
