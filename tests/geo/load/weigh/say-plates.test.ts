import { describe, expect, it } from 'vitest';
import { kgField, readItemKg, readX, xField } from '../../../../geo/load/list/read-entries.ts';
import { kgText, sayPlate, sayShare, sayWhere, sumText } from '../../../../geo/load/weigh/say-plates.ts';
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
