import { describe, expect, it } from 'vitest';
import type { Answer } from '../../../../geo/load/ask/ask-about.ts';
import { sayAnswer, sayMost } from '../../../../geo/load/ask/say-answer.ts';
import { kgField, readCount, readItemKg, readX, xField } from '../../../../geo/load/list/read-entries.ts';
import { withMass } from '../../../../geo/load/list/with-mass.ts';
import type { LoadFigures } from '../../../../geo/load/weigh/figures.ts';
import type { MostAt } from '../../../../geo/load/weigh/most-at.ts';
import {
  headlineOf,
  kgText,
  sayBalance,
  sayPlate,
  sayRounded,
  sayShare,
  sayWhere,
  sumText,
} from '../../../../geo/load/weigh/say-plates.ts';
import { decidingOf, sumsOf } from '../../../../geo/load/weigh/sums.ts';
import { weigh } from '../../../../geo/load/weigh/weigh.ts';
import { sayEmptyWeight } from '../../../../geo/vehicle/say-empty-weight.ts';
import { COACH_BUILT, FAMILY } from '../family.ts';

function loaded(items: Parameters<typeof weigh>[1]) {
  const found = weigh(COACH_BUILT, items);
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
}

describe('what decides', () => {
  it('is the plate with the least spare while nothing is over', () => {
    const first = decidingOf(loaded([]));
    expect(sumText(first)).toBe('1850 − 1590 = 260 kg');
    expect(sayPlate(first)).toBe('260 kg spare, front axle');
  });

  it('is the worst of what is over', () => {
    expect(sayPlate(decidingOf(loaded(FAMILY)))).toBe('gross over by 26 kg');
    const stones = { name: 'Stones', massKg: 400, xM: 5.35 };
    expect(decidingOf(loaded([stones])).limit).toBe('rear');
  });

  it('is rounded against the driver, and the sum still adds up', () => {
    const sum = decidingOf(loaded([{ name: 'Feather', massKg: 0.3, xM: 0 }]));
    expect(sumText(sum)).toBe('1850 − 1591 = 259 kg');
    const over = decidingOf(loaded([{ name: 'Anvil', massKg: 260.3, xM: 0 }]));
    expect(sumText(over)).toBe('1850 − 1851 = −1 kg');
    expect(sayPlate(over)).toBe('front axle over by 1 kg');
  });

  it('counts the rack where one is fitted', () => {
    expect(sumsOf(loaded(FAMILY)).map(({ limit }) => limit)).toEqual(['front', 'rear', 'gross', 'rack']);
  });
});

describe('words', () => {
  it('have true minus signs and no minus nought', () => {
    expect(kgText(-12)).toBe('−12 kg');
    expect(kgText(-0.2)).toBe('0 kg');
    expect(sayShare({ frontKg: 0.2, rearKg: -0.2 })).toBe('front 0, rear 0 kg');
    expect(sayShare({ frontKg: -37.2, rearKg: 104.2 })).toBe('front −37, rear +104 kg');
  });

  it('say where: behind, ahead of or over the front axle, and the place', () => {
    expect(sayWhere({ xM: 2.75, place: 'Kitchen' }, 'metric')).toBe('Kitchen, 2.75 m behind the front axle');
    expect(sayWhere({ xM: -0.4 }, 'metric')).toBe('0.40 m ahead of the front axle');
    expect(sayWhere({ xM: 0 }, 'metric')).toBe('over the front axle');
  });

  it('say what the empty weight holds', () => {
    const order = { frontKg: 1, rearKg: 1, includesDriver: false, includesFreshWater: true };
    expect(sayEmptyWeight(order)).toBe('without driver, with fresh water, 90 % fuel');
  });
});

describe('fields', () => {
  it('read kilograms, pounds and stones, and a minus for what is taken off', () => {
    expect(readItemKg('25')).toEqual({ ok: true, value: 25 });
    expect(readItemKg('−12,5')).toEqual({ ok: true, value: -12.5 });
    expect(readItemKg('11 st 11 lb')).toMatchObject({ ok: true, value: 74.843 });
    for (const text of ['', '-', 'heavy', '30000']) expect(readItemKg(text).ok).toBe(false);
  });

  it('read a distance with a point or a comma, ahead with a minus', () => {
    expect(readX('2,75 m')).toEqual({ ok: true, value: 2.75 });
    expect(readX('−0.4')).toEqual({ ok: true, value: -0.4 });
    for (const text of ['', 'rear', '275', '1e3']) expect(readX(text).ok).toBe(false);
  });

  it('show every figure so that it reads back as it was', () => {
    for (const kg of [0, 72, 33.2, -58.1, 7.47, 20_000])
      expect(readItemKg(kgField(kg)), String(kg)).toEqual({ ok: true, value: kg });
    for (const xM of [0, 2.4, 6.805, -0.35, 2.4567])
      expect(readX(xField(xM, 'metric')), String(xM)).toEqual({ ok: true, value: xM });
  });
});

describe('the headline of a load', () => {
  const light = loaded([]);
  it('says over, tight or within, whether it is an estimate and what else is to be checked', () => {
    expect(headlineOf(loaded(FAMILY), { doubtful: true, marginKg: 50 })).toMatch(
      /^OVER: .*Do not leave like this\.$/,
    );
    expect(headlineOf(light, { doubtful: false, marginKg: 500 })).toBe(
      'TIGHT: least spare: front axle, 260 kg, less than the 500 kg to keep.',
    );
    expect(headlineOf(light, { doubtful: true, marginKg: 50 })).toBe(
      'WITHIN THE PLATES: least spare: front axle, 260 kg. Check the points below.',
    );
    expect(headlineOf({ ...light, estimated: true }, { doubtful: false, marginKg: 500 })).toBe(
      'ESTIMATE, NOT WEIGHED. TIGHT: least spare: front axle, about 260 kg, less than the 500 kg to keep.',
    );
  });

  it('names the rack, and whose limit it has', () => {
    expect(sayWhere({ xM: 6.805, place: 'rack' }, 'metric')).toBe('the rack, 6.81 m behind the front axle');
    expect(sayBalance(loaded(FAMILY), 'metric')).toMatch(/ on the front\. Rack \d+ kg of \d+ kg/);
    const { rack: _, ...bare } = light;
    expect(sayBalance(bare, 'metric')).toMatch(
      /^Centre of mass [\d.]+ m behind the front axle: \d+ % on the front\.$/,
    );
    const unlisted = weigh({ ...COACH_BUILT, rack: { lengthM: 0.7, widthM: 2, fitted: true } }, []);
    expect(unlisted.ok && sayBalance(unlisted.value, 'metric')).toContain(
      'of 60 kg, common practice: its own limit is not on the card.',
    );
  });
});

describe('an answer to what is asked about', () => {
  const sum = decidingOf(loaded([]));
  const answer = (fits: boolean, most: MostAt) =>
    ({ fits, decides: [sum], result: loaded([]), most }) as unknown as Answer;
  const none: MostAt = { massKg: 0, binds: 'rack' };

  it('is no, yes or yes but tight, with what decides', () => {
    expect(sayAnswer(answer(true, none), 50)).toBe('Yes: 260 kg spare, front axle.');
    expect(sayAnswer(answer(true, none), 500)).toBe('Yes, but it gets tight: 260 kg spare, front axle.');
    expect(sayAnswer(answer(false, none), 50)).toBe('Not like this: 260 kg spare, front axle.');
  });

  it('says the most that can be added, what is reached then and when the front gets light', () => {
    expect(sayMost(answer(true, { massKg: 0.4, binds: 'rack' }))).toBe(
      'Nothing more can be added there as things are: the limit of the rack is reached.',
    );
    expect(sayMost(answer(true, { massKg: 83.9, binds: 'rear' }))).toBe(
      'At most 83 kg can be added there as things are; then the rear axle plate is reached.',
    );
    expect(sayMost(answer(true, { massKg: 83.9, binds: 'rear', handbookKg: 41 }))).toMatch(
      / From 41 kg less than 40 % stand on the front axle\.$/,
    );
  });
});

describe('entries as typed', () => {
  it('of how many are whole numbers within what is asked', () => {
    expect(readCount(' 3 ', 8)).toEqual({ ok: true, value: 3 });
    for (const text of ['0', '9', '2.5', 'two', ''])
      expect(readCount(text, 8)).toMatchObject({ error: { message: 'Write a whole number from 1 to 8.' } });
  });

  it('of places are written in the units chosen, whole inches as they were typed', () => {
    expect(xField(2.75, 'metric')).toBe('2.75');
    expect(xField(2.7432, 'metric')).toBe(`9'0"`);
    expect(xField(2.75, 'imperial')).toBe(`9'0 1/2"`);
  });
});

describe('a mass put right in the list', () => {
  it('takes the litres of a liquid along, by what a litre weighs', () => {
    const fuel = { name: 'Diesel', kind: 'fuel', massKg: 83, litres: 100, xM: 2 } as const;
    // 0.83 kg a litre
    expect(withMass(fuel, 41.5)).toMatchObject({ massKg: 41.5, litres: 50 });
    expect(withMass(fuel, 0)).toEqual({ name: 'Diesel', kind: 'fuel', massKg: 0, xM: 2 });
    expect(withMass({ name: 'Box', massKg: 10, xM: 2 }, 12)).toEqual({ name: 'Box', massKg: 12, xM: 2 });
    expect(withMass({ name: 'Box', massKg: 10, litres: 80, xM: 2 }, 12)).toEqual({
      name: 'Box',
      massKg: 12,
      xM: 2,
    });
  });
});

it('axles that come to a kilogram more than the gross as shown are told why', () => {
  const of = (frontKg: number, rearKg: number) =>
    sayRounded({ frontKg, rearKg, grossKg: frontKg + rearKg } as LoadFigures);
  expect(of(1600, 1900)).toBe('');
  expect(of(1600.4, 1899.5)).toMatch(/^Each figure is rounded up by itself/);
});
