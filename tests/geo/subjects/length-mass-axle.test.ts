import { describe, expect, it } from 'vitest';
import { axle } from '../../../geo/subjects/axle.ts';
import { length } from '../../../geo/subjects/length.ts';
import { mass } from '../../../geo/subjects/mass.ts';
import { askNode, askRoad, COACHBUILT } from '../../support/ask.ts';

const rack = { lengthM: 0.6, widthM: 1.8, fitted: true };

describe('length', () => {
  it('a 7 m limit lets a 7.0 m vehicle by and bars it with its rack fitted', () => {
    expect(askRoad(length, { maxlength: '7' })).toEqual([]);
    expect(askRoad(length, { maxlength: '7' }, { card: { ...COACHBUILT, rack } })[0]).toMatchObject({
      level: 'barred',
      vehicle: { value: 7.6, what: 'length with rack' },
      spare: -0.6,
    });
  });

  it('does not count a rack that is not fitted', () => {
    const card = { ...COACHBUILT, rack: { ...rack, fitted: false } };
    expect(askRoad(length, { maxlength: '7' }, { card })).toEqual([]);
  });

  it('asks for no margin', () => {
    expect(askRoad(length, { maxlength: '6.99' })[0]?.level).toBe('barred');
  });

  it('limits of articulated lorries and buses are none of ours', () => {
    expect(askRoad(length, { 'maxlength:hgv_articulated': '5', 'maxlength:bus': '5' })).toEqual([]);
  });

  it('on a ferry counts', () => {
    expect(askRoad(length, { highway: 'residential', maxlength: '6' })[0]?.level).toBe('barred');
  });
});

describe('mass', () => {
  it('a 3.5 t plate passes a 3.5 t limit and is over on the plate at 3 t', () => {
    expect(askRoad(mass, { maxweight: '3.5' })).toEqual([]);
    expect(askRoad(mass, { maxweight: '7.5' })).toEqual([]);
    const [finding] = askRoad(mass, { maxweight: '3' });
    expect(finding).toMatchObject({
      level: 'barred',
      limit: { value: 3000, unit: 'kg', asMapped: '3' },
      vehicle: { value: 3500, unit: 'kg', what: 'plated gross mass' },
      spare: -500,
    });
    expect(finding?.say).toContain(
      'over on the plate by 500 kg. It may weigh less today; that is not counted on.',
    );
  });

  it('is held against rated limits too, and the lower one is said', () => {
    expect(askRoad(mass, { maxweight: '7.5', maxweightrating: '3' })[0]).toMatchObject({
      level: 'barred',
      tags: { maxweightrating: '3' },
    });
  });

  it('limits of goods vehicles do not bind a 3.5 t motorhome', () => {
    expect(
      askRoad(mass, { 'maxweightrating:hgv': '2.8', 'maxweight:goods': '3', 'hgv:maxweight': '3' }),
    ).toEqual([]);
  });

  it('limits of goods vehicles are unproved for a motorhome over 3.5 t that exceeds them', () => {
    const card = { ...COACHBUILT, grossKg: 4250 };
    expect(askRoad(mass, { 'maxweightrating:hgv': '3.5' }, { card })[0]?.level).toBe('unproved');
    expect(askRoad(mass, { 'maxweightrating:hgv': '7.5' }, { card })).toEqual([]);
  });

  it('limits said of motorhomes override the plain one', () => {
    expect(askRoad(mass, { maxweight: '3', 'maxweight:motorhome': 'none' })).toEqual([]);
    expect(askRoad(mass, { maxweight: '7.5', 'maxweight:motorhome': '3' })[0]?.level).toBe('barred');
  });

  it.each(['maxweight:signed', 'maxweight:mlc:oneway', 'maxweight:except', 'maxweight:note'])(
    'is not limited by %s',
    (key) => {
      expect(askRoad(mass, { [key]: '1' })).toEqual([]);
    },
  );

  it('limits nobody can read are unproved', () => {
    expect(askRoad(mass, { maxweight: '3500' })[0]?.say).toContain('kilograms or pounds');
    expect(askRoad(mass, { maxweight: '12,000' })[0]?.level).toBe('unproved');
  });

  it('limits below the general rule by nobody knows how much are unproved', () => {
    expect(askRoad(mass, { maxweight: 'below_default' })[0]?.level).toBe('unproved');
    expect(askRoad(mass, { maxweight: 'unsigned' })).toEqual([]);
    expect(askRoad(mass, { maxweight: 'default' })).toEqual([]);
  });

  it('limits said of motorhomes are not lifted by a condition said of all', () => {
    const tags = { 'maxweight:motorhome': '3', 'maxweight:conditional': 'none @ destination' };
    expect(askRoad(mass, tags).map((finding) => finding.level)).toEqual(['barred', 'unproved']);
  });

  it('limits lifted for some are unproved with their text', () => {
    const findings = askRoad(mass, { maxweight: '3', 'maxweight:conditional': 'none @ destination' });
    expect(findings.map((finding) => finding.level)).toEqual(['unproved']);
    expect(findings[0]?.say).toContain('none @ destination');
  });

  it('a 7.5 t limit under any condition is folded away for 3.5 t', () => {
    expect(askRoad(mass, { 'maxweight:conditional': '7.5 @ (22:00-06:00; PH)' })[0]).toMatchObject({
      level: 'unproved',
      folded: true,
    });
  });

  it('unladen limits are held against the unladen mass, which the card must give', () => {
    const card = { ...COACHBUILT, unladenKg: 2900 };
    expect(askRoad(mass, { maxunladenweight: '3' }, { card })).toEqual([]);
    expect(askRoad(mass, { maxunladenweight: '2.5' }, { card })[0]?.level).toBe('barred');
    expect(askRoad(mass, { maxunladenweight: '3' })[0]?.level).toBe('squeeze');
  });

  it('of a lift beside or on the road is none of ours', () => {
    expect(askNode(mass, { highway: 'elevator', maxweight: '0.63' })).toEqual([]);
  });

  it('limits at a node count', () => {
    expect(askNode(mass, { barrier: 'height_restrictor', maxheight: '4', maxweight: '3' })[0]?.level).toBe(
      'barred',
    );
  });
});

describe('axle load', () => {
  it('is held against the heavier plate', () => {
    expect(askRoad(axle, { maxaxleload: '2' })).toEqual([]);
    expect(askRoad(axle, { maxaxleload: '1.9' })[0]).toMatchObject({
      level: 'barred',
      vehicle: { value: 2000, what: 'rear axle plate' },
      spare: -100,
    });
    const card = { ...COACHBUILT, axleKg: { front: 2100, rear: 2000 } };
    expect(askRoad(axle, { maxaxleload: '2' }, { card })[0]).toMatchObject({
      vehicle: { what: 'front axle plate' },
    });
  });

  it('bogie limits only matter to a double axle, which the card cannot tell', () => {
    expect(askRoad(axle, { maxbogieweight: '8' })).toEqual([]);
    expect(askRoad(axle, { maxbogieweight: '1.9' })[0]?.level).toBe('squeeze');
  });
});
