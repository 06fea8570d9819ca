import { describe, expect, it } from 'vitest';
import { weigh } from '../../../../geo/load/weigh/weigh.ts';
import { axle } from '../../../../geo/rules/limits/axle.ts';
import { length } from '../../../../geo/rules/limits/length.ts';
import { mass } from '../../../../geo/rules/limits/mass.ts';
import { width } from '../../../../geo/rules/limits/width.ts';
import { askDrive, askNode, askRoad, COACHBUILT } from '../../../support/ask.ts';
import { testMap } from '../../../support/drive-on.ts';

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
  it('a 3.5 t plate passes a 3.5 t limit and is over a limit of 3 t', () => {
    expect(askRoad(mass, { maxweight: '3.5' })).toEqual([]);
    expect(askRoad(mass, { maxweight: '7.5' })).toEqual([]);
    const [finding] = askRoad(mass, { maxweight: '3' });
    expect(finding).toMatchObject({
      level: 'barred',
      limit: { value: 3000, unit: 'kg', asMapped: '3' },
      vehicle: { value: 3500, unit: 'kg', what: 'plated gross mass' },
      spare: -500,
    });
    expect(finding?.say).toContain('500 kg over the limit. It may weigh less today; that is not counted on.');
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

  it('limits of goods vehicles are unknown for a motorhome over 3.5 t that exceeds them', () => {
    const card = { ...COACHBUILT, grossKg: 4250 };
    expect(askRoad(mass, { 'maxweightrating:hgv': '3.5' }, { card })[0]?.level).toBe('unknown');
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

  it('limits nobody can read are unknown', () => {
    expect(askRoad(mass, { maxweight: '3500' })[0]?.say).toContain('kilograms or pounds');
    expect(askRoad(mass, { maxweight: '12,000' })[0]?.level).toBe('unknown');
  });

  it('limits below the general rule by nobody knows how much are unknown', () => {
    expect(askRoad(mass, { maxweight: 'below_default' })[0]?.level).toBe('unknown');
    expect(askRoad(mass, { maxweight: 'unsigned' })).toEqual([]);
    expect(askRoad(mass, { maxweight: 'default' })).toEqual([]);
  });

  it('limits said of motorhomes are not lifted by a condition said of all', () => {
    const tags = { 'maxweight:motorhome': '3', 'maxweight:conditional': 'none @ destination' };
    expect(askRoad(mass, tags).map((finding) => finding.level)).toEqual(['barred']);
  });

  it('limits lifted for those who go there are lifted in the run at the drive’s end, not in passing', () => {
    const weak = { highway: 'residential', maxweight: '3', 'maxweight:conditional': 'none @ destination' };
    const roads = testMap([
      { id: 1, nodes: ['0,0', '3,0'], tags: { highway: 'residential' } },
      { id: 2, nodes: ['3,0', '6,0'], tags: weak },
      { id: 3, nodes: ['6,0', '9,0'], tags: { highway: 'residential' } },
    ]);
    expect(askDrive(mass, roads, [1, 2])).toEqual([]);
    expect(askDrive(mass, roads, [1, 2, 3])).toMatchObject([{ level: 'barred', tags: { maxweight: '3' } }]);
  });

  it('a 7.5 t limit at any hour is nothing to 3.5 t, and folded away where nobody can read it', () => {
    expect(askRoad(mass, { 'maxweight:conditional': '7.5 @ (22:00-06:00; PH)' })).toEqual([]);
    expect(askRoad(mass, { 'maxweight:conditional': '7.5 @ ((' })[0]).toMatchObject({
      level: 'unknown',
      folded: true,
    });
    expect(askRoad(mass, { 'maxweight:conditional': '3 @ ((' })[0]?.folded).toBeUndefined();
  });

  it('limits of goods vehicles bind over 3.5 t where the country’s law says so', () => {
    const card = { ...COACHBUILT, grossKg: 4250 };
    const where = (country: string, limit: string) =>
      askRoad(mass, { 'maxweightrating:hgv': limit }, { card, country }).map((finding) => finding.level);
    expect(where('DE', '3.5')).toEqual(['barred']);
    expect(where('DE', '7.5')).toEqual([]);
    expect(where('GB', '3.5')).toEqual([]);
    expect(where('US', '3.5')).toEqual(['unknown']);
    expect(askRoad(mass, { 'maxlength:hgv_articulated': '3' }, { card, country: 'DE' })).toEqual([]);
  });

  it('of a country whose sign is about the plate says so', () => {
    const say = (country: string) => askRoad(mass, { maxweight: '3' }, { country })[0]?.say;
    // a camping federation on the French B13 sign; StVO Anlage 2 on the German 262
    expect(say('FR')).toContain('In France the plate decides, however little it weighs today.');
    // from memory: not told as a fact
    expect(say('IE')).not.toContain('the plate decides');
    expect(say('DE')).toContain('It may weigh less today; that is not counted on.');
  });

  it('unladen limits are held against the unladen mass, which the card must give', () => {
    const card = { ...COACHBUILT, unladenKg: 2900 };
    expect(askRoad(mass, { maxunladenweight: '3' }, { card })).toEqual([]);
    expect(askRoad(mass, { maxunladenweight: '2.5' }, { card })[0]?.level).toBe('barred');
    expect(askRoad(mass, { maxunladenweight: '3' })[0]).toMatchObject({ level: 'unknown', wants: 'measure' });
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
      vehicle: { value: 2000, what: 'rear axle plate', axle: 'rear' },
      spare: -100,
    });
    const card = { ...COACHBUILT, axleKg: { front: 2100, rear: 2000 } };
    expect(askRoad(axle, { maxaxleload: '2' }, { card })[0]).toMatchObject({
      vehicle: { what: 'front axle plate', axle: 'front' },
    });
  });

  it('bogie limits only matter to a double axle, which the card cannot tell', () => {
    expect(askRoad(axle, { maxbogieweight: '8' })).toEqual([]);
    expect(askRoad(axle, { maxbogieweight: '1.9' })[0]?.level).toBe('tight');
  });
});

describe('a load', () => {
  const card = {
    ...COACHBUILT,
    runningOrder: { frontKg: 1550, rearKg: 1450, includesDriver: true, includesFreshWater: false },
  };
  /** one thing on board, so many kilograms over the plate when above 500 */
  const loaded = (massKg: number, xM: number) => {
    const result = weigh(card, [{ name: 'box', massKg, xM }]);
    if (!result.ok) throw new Error(result.error.message);
    return { card, load: result.value };
  };

  it('below the plate changes nothing, and its mass is said', () => {
    expect(askRoad(mass, { maxweight: '3.5' }, loaded(400, 3))).toEqual([]);
    const [finding] = askRoad(mass, { maxweight: '3.45' }, loaded(400, 3));
    expect(finding).toMatchObject({
      level: 'barred',
      vehicle: { value: 3500, what: 'plated gross mass' },
      spare: -50,
    });
    expect(finding?.say).toContain('Loaded as listed it weighs 3400 kg; that is not counted on.');
  });

  it('above the plate is held against the road in its stead', () => {
    const [finding] = askRoad(mass, { maxweight: '3.5' }, loaded(593, 2));
    expect(finding).toMatchObject({
      level: 'barred',
      vehicle: { value: 3593, what: 'mass as loaded' },
      spare: -93,
    });
    expect(finding?.say).toContain('plated at 3500 kg and loaded as listed 3593 kg, over its plate by 93 kg');
    expect(askRoad(mass, { maxweight: '3' }, loaded(593, 2))[0]?.spare).toBe(-593);
    expect(askRoad(mass, { maxweight: '3.6' }, loaded(593, 2))).toEqual([]);
  });

  it('above a limit on the plate that the plate keeps is tight', () => {
    expect(askRoad(mass, { maxweightrating: '3.5' }, loaded(593, 2))[0]?.level).toBe('tight');
    expect(askRoad(mass, { maxweightrating: '3' }, loaded(593, 2))[0]?.level).toBe('barred');
  });

  it('above a plate is judged by conditions on mass', () => {
    const tags = { maxheight: '4', 'access:conditional': 'no @ (weight>3.5)' };
    expect(askRoad(mass, { 'maxweight:conditional': '3 @ (weight>3.5)', ...tags }, loaded(400, 3))).toEqual(
      [],
    );
    expect(
      askRoad(mass, { 'maxweight:conditional': '3 @ (weight>3.5)', ...tags }, loaded(593, 2))[0]?.level,
    ).toBe('barred');
  });

  it('on an axle above its plate is held against axle limits', () => {
    expect(askRoad(axle, { maxaxleload: '2' }, loaded(490, 4))).toEqual([]);
    const over = loaded(480, 5);
    expect(askRoad(axle, { maxaxleload: '2' }, over)[0]).toMatchObject({
      level: 'barred',
      vehicle: { value: 2050, what: 'rear axle as loaded' },
      spare: -50,
    });
    expect(askRoad(axle, { maxaxleload: '1.9' }, loaded(400, 4))[0]?.say).toContain(
      'It carries 1850 kg as listed',
    );
  });
});

it('a limit that only advises is tight where a legal one bars', () => {
  for (const [rule, key, text] of [
    [length, 'maxlength', '6'],
    [mass, 'maxweight', '3'],
    [mass, 'maxweightrating', '3'],
    [width, 'maxwidth', '2.2'],
  ] as const) {
    expect(askRoad(rule, { [key]: text })[0]?.level).toBe('barred');
    expect(askRoad(rule, { [`${key}:advisory`]: text })[0]?.level).toBe('tight');
  }
});

it('two conditions on one limit that nobody can settle are told as mapped, the one for a direction included', () => {
  const [found] = askRoad(mass, {
    maxweight: '7.5',
    'maxweight:conditional': '3 @ (sometimes)',
    'maxweight:forward:conditional': '2.8 @ (22:00-06:00)',
  });
  expect(found?.level).toBe('unknown');
  expect(found?.tags).toMatchObject({ 'maxweight:conditional': '3 @ (sometimes)' });
});

it('in a country where the plate decides a sign of masses says so, and what is loaded beside it', () => {
  const load = { grossKg: 3300, frontKg: 1500, rearKg: 1800 } as never;
  const [found] = askRoad(mass, { maxweight: '3.4' }, { country: 'DE', load });
  expect(found?.say).toMatch(/Loaded as listed it weighs 3300 kg/);
});
