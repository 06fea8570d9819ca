import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadResult } from '../../../../geo/load/load-result.ts';
import { litresIn, setTank } from '../../../../geo/load/places/in-tank.ts';
import { onTheWay, overStops } from '../../../../geo/load/tanks/on-the-way.ts';
import { anyItem, CARD, HEAVY, thing, WASTE, WATER, weighed } from '../load-card.ts';

const full = setTank(CARD, [], WATER, 80);
const warned = (items: Parameters<typeof loadResult>[1], card = CARD) => {
  const result = loadResult(card, items);
  return result.ok ? result.value : undefined;
};

describe('the tanks on the way', () => {
  it('80 l of fresh water used run into the waste tank behind the rear axle: 30 kg more on the rear axle than used up', () => {
    const [used] = onTheWay(CARD, full);
    expect(used?.kind).toBe('used into the waste tank');
    expect(used?.result.grossKg).toBeCloseTo(weighed(full).grossKg, 9);
    // from 2.5 m to 5.4 m behind the front axle, wheelbase 4 m
    expect((used?.result.rearKg ?? 0) - weighed(full).rearKg).toBeCloseTo((80 * (5.4 - 2.5)) / 4, 9);
  });

  it('a rear axle that the plates allow at the start and the waste water overloads on the way is a warning', () => {
    const items = [...full, thing('garage', 110, 5.2, { place: 'Garage' })];
    const card = { ...HEAVY, axleKg: { front: 2100, rear: Math.ceil(weighed(items, HEAVY).rearKg) + 20 } };
    expect(weighed(items, card).over).toEqual([]);
    expect(weighed(items, card).warnings.join(' ')).not.toContain('On the way');
    expect(warned(items, card)?.warnings.join(' ')).toMatch(
      /On the way, with the fresh water used and in the waste tank: rear axle over by 3[78] kg/,
    );
  });

  it('filling up beyond the gross plate is a note: somebody has to do it', () => {
    const items = setTank(CARD, [thing('things', 420, 2)], WATER, 0);
    const result = warned(items);
    expect(result?.notes.join(' ')).toContain(
      'On the way, with the fresh water filled up: gross over by 40 kg',
    );
    expect(result?.warnings.join(' ')).not.toContain('On the way');
  });

  it('more water than the waste tank holds runs no farther than its brim', () => {
    const [used] = onTheWay(CARD, setTank(CARD, [], WATER, 120));
    expect(weighed([]).grossKg + WASTE.capacityL).toBeCloseTo(used?.result.grossKg ?? 0, 9);
  });

  it('dumping comes after using, and filling up last; what changes nothing is left out', () => {
    expect(onTheWay(CARD, full).map(({ kind }) => kind)).toEqual([
      'used into the waste tank',
      'emptied',
      'filled up',
    ]);
    expect(onTheWay(CARD, []).map(({ kind }) => kind)).toEqual(['filled up']);
    const { tanks: _, ...without } = CARD;
    expect(onTheWay(without, full)).toEqual([]);
  });

  it('ends with full water and empty waste, whatever else is aboard', () => {
    fc.assert(
      fc.property(
        fc.array(anyItem, { maxLength: 6 }),
        fc.integer({ min: 0, max: 120 }),
        fc.integer({ min: 0, max: 90 }),
        (things, freshL, wasteL) => {
          const items = setTank(CARD, setTank(CARD, things, WATER, freshL), WASTE, wasteL);
          const last = onTheWay(CARD, items).at(-1);
          const end = setTank(CARD, setTank(CARD, items, WASTE, 0), WATER, WATER.capacityL);
          expect(litresIn(CARD, end, WATER)).toBeCloseTo(120, 9);
          expect((last?.result ?? weighed(items)).grossKg).toBeCloseTo(weighed(end).grossKg, 6);
        },
      ),
    );
  });
});

describe('few things', () => {
  it('are asked about: a list of 20 kg has probably forgotten some', () => {
    expect(warned([thing('bag', 20, 3)])?.notes.join(' ')).toContain('Only 20 kg of things are listed');
  });

  it('are not asked about once the least that a maker must allow for is there, or nothing is listed at all', () => {
    expect(warned([thing('bags', 100, 3)])?.notes.join(' ')).not.toContain('Is everything listed');
    expect(warned([])?.notes.join(' ')).not.toContain('Is everything listed');
  });

  it('over stops as they are planned: each is told with the levels then, and nothing is forgotten between two', () => {
    const full = setTank(CARD, [], WATER, 100);
    const stops = overStops(CARD, full, ['use water', 'fill water', 'use water', 'empty waste']);
    // the waste tank holds 90 litres: what is beyond has run out by the second time
    expect(stops.map(({ levels }) => levels.map(({ litres }) => Math.round(litres)))).toEqual([
      [0, 90],
      [120, 90],
      [0, 90],
      [0, 0],
    ]);
    expect(stops.at(-1)?.result.grossKg).toBeCloseTo(3000, 6);
    expect(overStops(CARD, [], ['empty waste'])[0]?.moved).toBe(false);
  });
});
