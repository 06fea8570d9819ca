import { describe, expect, it } from 'vitest';
import type { Tags } from '../../geo/roads/roads.ts';
import { access } from '../../geo/rules/access/access.ts';
import { barrier } from '../../geo/rules/access/barrier.ts';
import { axle } from '../../geo/rules/limits/axle.ts';
import { height } from '../../geo/rules/limits/height.ts';
import { mass } from '../../geo/rules/limits/mass.ts';
import { width } from '../../geo/rules/limits/width.ts';
import type { SubjectRule } from '../../geo/rules/rule.ts';
import { accessFor } from '../../geo/tags/access.ts';
import { onewayFor } from '../../geo/tags/oneway.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import { askNode, askRoad, COACHBUILT } from '../support/ask.ts';

function meaning(tags: Tags, forward = true): string {
  return accessFor({ tags: { highway: 'residential', ...tags }, forward }).meaning;
}

function levels(rule: SubjectRule, tags: Tags, card: VehicleCard = COACHBUILT): string[] {
  return askRoad(rule, tags, { card }).map((finding) => finding.level);
}

describe('access as the OSM wiki documents it', () => {
  // OSM wiki, Tag:vehicle=destination and Tag:motor_vehicle=yes: a more specific key overrides a general one
  it('a more specific key overrides a general one', () => {
    expect(meaning({ access: 'no', motor_vehicle: 'yes' })).toBe('open');
    expect(meaning({ vehicle: 'destination', motor_vehicle: 'no' })).toBe('no');
    expect(meaning({ access: 'yes', vehicle: 'destination' })).toBe('destination');
  });

  // OSM wiki, Key:access: hgv, goods, tourist_bus, motorcar and caravan are siblings of motorhome
  it('siblings do not speak of a motorhome', () => {
    expect(
      meaning({ hgv: 'no', goods: 'no', tourist_bus: 'no', caravan: 'no', motorcar: 'destination' }),
    ).toBe('open');
  });

  // OSM wiki, Forward & backward, left & right; Key:oneway
  it('forward and backward follow the drawn direction, also where oneway=-1', () => {
    expect(meaning({ oneway: '-1', 'motor_vehicle:forward': 'no' }, false)).toBe('open');
    expect(onewayFor({ tags: { oneway: '-1' }, forward: false }).allowed).toBe('yes');
    expect(onewayFor({ tags: { oneway: '-1' }, forward: true }).allowed).toBe('no');
  });

  // OSM wiki, Key:oneway and Key:junction: roundabouts are one-way unsaid. Motorways likewise.
  it('roundabouts and motorways are one-way unsaid', () => {
    expect(onewayFor({ tags: { highway: 'primary', junction: 'roundabout' }, forward: false }).allowed).toBe(
      'no',
    );
    expect(onewayFor({ tags: { highway: 'motorway' }, forward: false }).allowed).toBe('no');
  });

  // OSM wiki, Barriers; Tag:barrier=height_restrictor; the defaults of gates and bollards: common practice, no source
  it('each barrier has its own default, and tags on it override', () => {
    expect(askNode(barrier, { barrier: 'bollard' })[0]?.level).toBe('barred');
    expect(askNode(barrier, { barrier: 'lift_gate' })[0]?.level).toBe('unknown');
    expect(askNode(barrier, { barrier: 'lift_gate', motor_vehicle: 'yes' })).toEqual([]);
    expect(askNode(height, { barrier: 'height_restrictor', maxheight: '2.1' })[0]?.level).toBe('barred');
  });

  // OSM wiki, Key:access: discouraged is legal and advised against
  it('discouraged is not forbidden', () => {
    expect(levels(access, { motor_vehicle: 'discouraged' })).toEqual(['care']);
  });
});

describe('limits as the OSM wiki documents them', () => {
  // OSM wiki, Key:maxweightrating: a vehicle plated over the rated limit fails it however empty it is
  it('a rated limit is held against the plate', () => {
    const plated15 = { ...COACHBUILT, grossKg: 15_000 };
    expect(levels(mass, { maxweightrating: '10' }, plated15)).toEqual(['barred']);
  });

  // OSM wiki, Key:maxheight:physical: check both, the lower decides
  it('the lower of legal and physical height decides', () => {
    expect(levels(height, { maxheight: '3.0', 'maxheight:physical': '3.5' })).toEqual(['barred']);
    expect(levels(height, { maxheight: '3.5', 'maxheight:physical': '3.0' })).toEqual(['barred']);
  });

  // OSM wiki, Key:maxheight: Germany signs below 4.5 m; Tag:maxheight=default: no sign, the national rule
  it('default bars no vehicle of legal height; below_default proves nothing', () => {
    expect(levels(height, { maxheight: 'default' })).toEqual([]);
    expect(levels(height, { maxheight: 'below_default' })).toEqual(['unknown']);
  });

  // OSM wiki, Key:width and Key:est_width: the carriageway, no limit
  it('width of the carriageway is no limit', () => {
    expect(levels(width, { width: '1.9', est_width: '1.9' })).toEqual([]);
  });

  // OSM wiki, Key:maxbogieweight: for a group of axles
  it('a bogie limit is not an axle limit', () => {
    expect(levels(axle, { maxbogieweight: '3' })).toEqual([]);
  });
});

describe('signs of Great Britain', () => {
  const body = (widthM: number, widthMirrorsM: number): VehicleCard => {
    const { widthMirrorsFoldedM: _, ...card } = COACHBUILT;
    return { ...card, widthM, widthMirrorsM };
  };

  // Traffic Signs Manual, chapter 3 (2008), 5.35: the usual order is 6'6"; that it is about the body: C&U reg. 3.
  // The vans' widths: owners' figures and common practice, no source
  it('6\'6" bars a coach-built and a 2.05 m van; 7\'0" leaves that van its mirrors to think of', () => {
    expect(levels(width, { maxwidth: `6'6"` }, body(2.3, 2.75))).toEqual(['barred']);
    expect(levels(width, { maxwidth: `6'6"` }, body(2.05, 2.5))).toEqual(['barred']);
    expect(levels(width, { maxwidth: `7'0"` }, body(2.05, 2.5))).toEqual(['tight']);
  });

  // Traffic Signs Manual, chapter 3 (2008): structural limits of 3, 7.5, 10, 13, 18, 26 and 33 t, on the plated mass
  it('of the structural limits only 3 t stops a 3.5 t vehicle', () => {
    for (const tonnes of ['7.5', '10', '13', '18', '26', '33'])
      expect(levels(mass, { maxweight: tonnes })).toEqual([]);
    expect(levels(mass, { maxweight: '3' })).toEqual(['barred']);
  });

  // Traffic Signs Manual, chapter 3, 5.15: the lorry sign is for goods vehicles; a motor caravan is none
  it('the lorry sign does not stop it', () => {
    expect(levels(mass, { 'maxweightrating:hgv': '3' })).toEqual([]);
    expect(levels(access, { hgv: 'no' })).toEqual([]);
  });

  // Traffic Signs Manual, chapter 4 (2013), 7.11: multiples of 3 inches, at least 3 inches below the measured height.
  // The margin of 0.05 m and the caution below 0.15 m: this program's own choice
  it.each([
    [`10'0"`, ['barred']],
    [`10'3"`, ['tight']],
    [`10'6"`, ['tight']],
    [`10'9"`, []],
  ])('a 3.05 m vehicle at a %s sign: %j', (maxheight, expected) => {
    expect(levels(height, { maxheight })).toEqual(expected);
  });
});
