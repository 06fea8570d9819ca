import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { askAbout } from '../../../../geo/load/ask/ask-about.ts';
import { cureOverload } from '../../../../geo/load/cure/cure.ts';
import { loadAsItStands } from '../../../../geo/load/doubts/load-with-doubts.ts';
import { litresIn, setTank } from '../../../../geo/load/places/in-tank.ts';
import { litresUntil } from '../../../../geo/load/tanks/litres-until.ts';
import { onTheWay, overStops, worstOnTheWay } from '../../../../geo/load/tanks/on-the-way.ts';
import { tankSteps } from '../../../../geo/load/tanks/tank-steps.ts';
import { tellTank } from '../../../../geo/load/tanks/tell-tank.ts';
import { decidingOf, spareOf, sumsOf } from '../../../../geo/load/weigh/sums.ts';
import { anyItem, CARD, HEAVY, thing, WASTE, WATER, weighed } from '../load-card.ts';

const until = (items: Parameters<typeof weighed>[0], tank = WATER, card = CARD) => {
  const found = litresUntil(card, items, tank);
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
};

describe('a tank', () => {
  it('may be filled until the first limit is reached, and it is said which', () => {
    expect(until([])).toEqual({ litres: 500, binds: 'gross', fullFits: true, overEmpty: false });
    expect(until([thing('box', 450, 3)])).toEqual({
      litres: 50,
      binds: 'gross',
      fullFits: false,
      overEmpty: false,
    });
    expect(until([thing('nose', 280, 0), thing('Water', 100, 2.5)]).binds).toBe('front');
  });

  it('is asked about whatever it holds', () => {
    const some = [thing('box', 450, 3)];
    for (const litres of [0, 20, 120])
      expect(until(setTank(CARD, some, WATER, litres)).litres).toBeCloseTo(50, 9);
  });

  it('stands at the limit to 0.1 l', () => {
    fc.assert(
      fc.property(fc.array(anyItem, { maxLength: 6 }), fc.constantFrom(WATER, WASTE), (items, tank) => {
        fc.pre(weighed(items).over.length === 0);
        const { litres } = until(items, tank);
        expect(weighed(setTank(CARD, items, tank, litres - 0.01)).over).toEqual([]);
        expect(weighed(setTank(CARD, items, tank, litres + 0.1)).over).not.toEqual([]);
      }),
    );
  });

  it('of an empty weight with water holds 90 % of it, and draining takes it off', () => {
    const card = {
      ...CARD,
      runningOrder: { frontKg: 1550, rearKg: 1450, includesDriver: true, includesFreshWater: true },
    };
    expect(litresIn(card, [], WATER)).toBe(108);
    const drained = setTank(card, [], WATER, 0);
    expect(drained).toMatchObject([{ massKg: -108, kind: 'fresh-water' }]);
    expect(weighed(drained, card).grossKg).toBe(2892);
    expect(litresIn(card, drained, WATER)).toBe(0);
    expect(setTank(card, drained, WATER, 108)).toEqual([]);
  });

  it('behind the rear axle, dumped, loads the front axle', () => {
    const steps = tankSteps(
      CARD,
      [thing('waste', 80, 5.4, { kind: 'waste-water' })],
      [{ tank: WASTE, toL: 0 }],
    );
    const [step] = steps.ok ? steps.value : [];
    expect(step?.change.frontKg).toBeCloseTo(28, 9);
    expect(step?.change.rearKg).toBeCloseTo(-108, 9);
    expect(step?.items).toEqual([]);
  });

  it('dumped and filled again weighs as before', () => {
    fc.assert(
      fc.property(fc.array(anyItem, { maxLength: 6 }), fc.integer({ min: 1, max: 90 }), (items, litres) => {
        const full = setTank(CARD, items, WASTE, litres);
        const steps = tankSteps(CARD, full, [
          { tank: WASTE, toL: 0 },
          { tank: WASTE, toL: litres },
        ]);
        const [dump, fill] = steps.ok ? steps.value : [];
        expect(dump?.change.frontKg).toBeCloseTo(-(fill?.change.frontKg ?? Number.NaN), 9);
        expect(dump?.change.rearKg).toBeCloseTo(-(fill?.change.rearKg ?? Number.NaN), 9);
        expect(fill?.result.grossKg).toBeCloseTo(weighed(full).grossKg, 9);
      }),
    );
  });
});

describe('a card without an empty weight', () => {
  const { runningOrder: _, ...bare } = CARD;
  const box = thing('box', 20, 2);

  it('is refused whatever is asked of its load, by what has to be weighed; what its tanks hold is told all the same', () => {
    const asked = [
      loadAsItStands(bare, [box]),
      litresUntil(bare, [box], WATER),
      tankSteps(bare, [box], []),
      cureOverload(bare, [box]),
      askAbout(bare, [], [box]),
    ];
    for (const answer of asked)
      expect(answer).toMatchObject({
        ok: false,
        error: { message: expect.stringContaining('has no empty weight') },
      });
    expect(overStops(bare, [box], ['fill water'])).toEqual([]);
    expect(tellTank(bare, [], WATER)).toMatchObject({ litres: 0, reach: undefined, todo: { kind: 'fill' } });
  });
});

describe('what is left of a limit', () => {
  it('is that of its plate, of its rack where the card gives one a limit, and nought of a rack that is not there', () => {
    const figures = weighed([thing('bikes', 50, 6.3, { place: 'rack' })], HEAVY);
    expect(spareOf(figures, 'gross')).toBe(figures.spare.grossKg);
    expect(spareOf(figures, 'rack')).toBeCloseTo(10, 9);
    expect(sumsOf(figures).map(({ limit }) => limit)).toEqual(['front', 'rear', 'gross', 'rack']);
    const { rack: _, ...without } = HEAVY;
    const bare = weighed([], without);
    expect(spareOf(bare, 'rack')).toBe(0);
    expect(sumsOf(bare).map(({ limit }) => limit)).toEqual(['front', 'rear', 'gross']);
  });
});

it('of the moments of a hire that are over, the one that is farthest over is the worst', () => {
  const items = setTank(CARD, [thing('things', 460, 3.9)], WATER, 60);
  const moments = onTheWay(CARD, items);
  const over = moments.filter(({ result }) => result.over.length > 0);
  expect(over.length).toBeGreaterThan(1);
  const most = Math.min(...over.map(({ result }) => decidingOf(result).spareKg));
  expect(decidingOf(worstOnTheWay(moments)!.result).spareKg).toBe(most);
  expect(decidingOf(worstOnTheWay(moments.toReversed())!.result).spareKg).toBe(most);
  expect(worstOnTheWay([])).toBeUndefined();
});
