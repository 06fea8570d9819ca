import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cureOverload } from '../../../../geo/load/cure/cure.ts';
import { sayCure, sayCures } from '../../../../geo/load/cure/say-cure.ts';
import type { LoadItem } from '../../../../geo/load/list/load-list.ts';
import { isAt, stowPlaces } from '../../../../geo/load/places/stow-places.ts';
import type { VehicleCard } from '../../../../geo/vehicle/card.ts';
import { CARD, curesOf, thing, weighed } from '../load-card.ts';

const best = (items: readonly LoadItem[], card = CARD) => {
  const [cure] = curesOf(items, card).cures;
  return cure === undefined ? 'none' : sayCure(cure);
};

describe('an overload', () => {
  it('that is none needs nothing', () => {
    expect(curesOf([thing('box', 100, 2)])).toEqual({ needed: false, cures: [], proved: true });
  });

  it('of the whole is cured by draining just what is over', () => {
    const items = [
      thing('box', 430, 3),
      thing('Fresh water', 100, 2.5, { place: 'Fresh tank', kind: 'fresh-water' }),
    ];
    expect(best(items)).toBe('drain 30 litres from "Fresh tank"');
    expect(weighed(curesOf(items).cures[0]?.items ?? []).spare.grossKg).toBeCloseTo(0, 9);
  });

  it('of one axle is cured by a move, with nothing left behind', () => {
    const items = [thing('tools', 90, 5.2, { place: 'Garage' }), thing('bed', 320, 5)];
    // 1450 + 90 · 5.2/4 + 320 · 5/4 = 1967; 50 kg more at 4 m are 17 over
    expect(weighed([...items, thing('fridge', 50, 4, { kind: 'person' })]).over).toEqual(['rear']);
    expect(best([...items, thing('fridge', 50, 4, { kind: 'person' })])).toMatch(
      /^move "(tools|bed)" .* to "Bench"$/,
    );
  });

  it('of the rack moves or leaves what stands on it', () => {
    const bikes = [thing('e-bike', 25, 6.3), thing('e-bike of Sam', 26, 6.3), thing('carrier', 17, 6.2)];
    expect(best(bikes)).toBe('move "carrier" (17 kg) to "Garage"');
  });

  it('goes where most may be carried, when several places would do', () => {
    const shelf = { name: 'Shelf', xM: 5.1, limitKg: 40 };
    const card = { ...CARD, lockers: [shelf, ...(CARD.lockers ?? [])] };
    expect(best([thing('bikes', 30, 6.3), thing('more bikes', 35, 6.3)], card)).toBe(
      'move "bikes" (30 kg) to "Garage"',
    );
  });

  it('never moves more into a locker or onto a rack than it takes', () => {
    const full = [thing('stove', 25, -0.4, { place: 'Nose' }), thing('anvil', 345, 6.0)];
    for (const cure of curesOf(full).cures)
      expect(weighed(cure.items).warnings.join()).not.toContain('its limit is');
  });

  it('leaves people aboard, and says where nothing listed can help', () => {
    const people = [1, 2, 3, 4, 5, 6, 7].map((n) => thing(`Passenger ${n}`, 80, 3));
    expect(curesOf(people)).toEqual({ needed: true, cures: [], proved: true });
    expect(sayCures(curesOf(people))).toContain('another vehicle');
  });

  it('drains the water that is in the empty weight too', () => {
    const card: VehicleCard = {
      ...CARD,
      runningOrder: { frontKg: 1550, rearKg: 1450, includesDriver: true, includesFreshWater: true },
    };
    expect(best([thing('Passengers', 520, 3)], card)).toBe('drain 20 litres from "Fresh tank"');
  });

  it('takes two tanks where one is not enough', () => {
    const items = [
      thing('Passengers', 500, 3),
      thing('Fresh water', 60, 2.5, { place: 'Fresh tank' }),
      thing('Waste water', 50, 5.4, { place: 'Waste tank' }),
    ];
    const [cure] = curesOf(items).cures;
    expect(cure?.leftKg).toBe(110);
    expect(weighed(cure?.items ?? []).over).toEqual([]);
  });

  it('of three things is cured with the fewest, then the least mass', () => {
    const items = [thing('a', 220, 3), thing('b', 200, 3), thing('c', 90, 3), thing('d', 45, 3)];
    // 555 kg on 500: b, a or c alone will do, d will not
    const { cures } = curesOf(items);
    expect(cures.map(sayCure)).toEqual([
      'leave "c" behind (90 kg)',
      'leave "b" behind (200 kg)',
      'leave "a" behind (220 kg)',
    ]);
  });

  it('in a very long list is still answered, and says that it is not proved', () => {
    const items = Array.from({ length: 300 }, (_, i) => thing(`box ${i}`, 5 + (i % 7) / 10, (i % 60) / 10));
    const cures = curesOf(items);
    expect(weighed(cures.cures[0]?.items ?? items).over).toEqual([]);
    if (!cures.proved) expect(sayCures(cures)).toContain('fewer steps');
  });
});

const someThings = fc.array(
  fc.record({
    name: fc.constantFrom('a', 'b', 'c', 'd', 'e'),
    massKg: fc.integer({ min: 5, max: 220 }),
    xM: fc.constantFrom(-0.4, 1, 2.2, 3.5, 4.4, 5.2, 6.3),
    place: fc.constantFrom('Garage', 'Bench', 'Nose', 'elsewhere'),
  }),
  { minLength: 1, maxLength: 5 },
);

/** Whether nothing is over: plates, rack, and each locker with a limit. */
function keepsAll(items: readonly LoadItem[]): boolean {
  if (weighed(items).over.length > 0) return false;
  return stowPlaces(CARD).every(
    (place) =>
      items.reduce((sum, item) => sum + (isAt(item, place, CARD) ? item.massKg : 0), 0) <=
      (place.limitKg ?? Number.POSITIVE_INFINITY) + 1e-6,
  );
}

/** Every list that handling so many items can lead to, tried one by one: the reference. */
function handled(items: readonly LoadItem[], count: number, from = 0): LoadItem[][] {
  if (count === 0) return [[...items]];
  return items.slice(from).flatMap((item, i) => {
    const at = from + i;
    const moved = stowPlaces(CARD).map((to) => items.with(at, { ...item, xM: to.xM, place: to.name }));
    // a mass of nothing stands for what is left behind, so that the others keep their places in the list
    const left = items.with(at, { ...item, massKg: 0 });
    return [...moved, left].flatMap((list) => handled(list, count - 1, at + 1));
  });
}

describe('every cure', () => {
  it('really cures, and no set with fewer steps does', () => {
    fc.assert(
      fc.property(someThings, (items) => {
        fc.pre(!keepsAll(items));
        const { cures, proved } = curesOf(items);
        expect(proved).toBe(true);
        for (const cure of cures) expect(keepsAll(cure.items)).toBe(true);
        const size = cures[0]?.steps.length ?? items.length + 1;
        for (let fewer = 1; fewer < Math.min(size, items.length + 1); fewer++)
          expect(handled(items, fewer).some(keepsAll)).toBe(false);
      }),
      { numRuns: 60 },
    );
  });

  it('is the same whenever it is asked', () => {
    fc.assert(
      fc.property(someThings, (items) => {
        expect(curesOf(items)).toEqual(curesOf(items));
      }),
      { numRuns: 20 },
    );
  });

  it('leaves a margin on each plate where it can', () => {
    // 3000 kg empty of 3500 kg: 40 kg over with both
    const items = [thing('Boat', 90, 2), thing('Stones', 450, 2)];
    const bare = { ...CARD, lockers: [], rack: undefined };
    const cures = cureOverload(bare, items, { marginKg: 60 });
    if (!cures.ok) throw new Error(cures.error.message);
    expect(cures.value.cures[0]?.after?.spare.grossKg).toBeGreaterThanOrEqual(60);
    const without = cureOverload(bare, items);
    expect(without.ok && without.value.cures[0]?.after?.spare.grossKg).toBe(50);
  });

  it('without room for the margin keeps the plates all the same', () => {
    const bare = { ...CARD, lockers: [], rack: undefined };
    const cures = cureOverload(bare, [thing('People', 480, 2, { kind: 'person' }), thing('Chair', 30, 2)], {
      marginKg: 50,
    });
    expect(cures.ok && cures.value.cures[0]?.after?.spare.grossKg).toBe(20);
  });

  it('leaves the awning and the chairs before clothes, food or medicine, though that is one step more', () => {
    const bare = { ...CARD, lockers: [], rack: undefined };
    const items = [
      thing('People', 400, 2, { kind: 'person' }),
      thing('Clothes', 60, 2),
      thing('Food', 60, 2),
      thing('Medicine', 60, 2),
      thing('Awning', 40, 2),
      thing('Chairs', 25, 2),
    ];
    // 145 kg over: both go, and then clothes or food, never medicine
    expect(best(items.slice(0, 1).concat(items.slice(3)), bare)).toBe('leave "Chairs" behind (25 kg)');
    const said = best(items, bare);
    expect(said).toContain('leave "');
    expect(said).not.toContain('Medicine');
    const few = [items[0]!, items[1]!, items[4]!, items[5]!].map((item) => ({
      ...item,
      massKg: item.name === 'People' ? 430 : item.massKg,
    }));
    // 55 kg over: the clothes alone would do
    expect(best(few, bare)).toBe('leave "Awning" behind (40 kg) and leave "Chairs" behind (25 kg)');
  });
});
