import { describe, expect, it } from 'vitest';
import { greedy } from '../../../../geo/load/cure/greedy.ts';
import { remediesFor } from '../../../../geo/load/cure/remedies.ts';
import { sayCure, sayCures, sayNoCure, sayNoRoom } from '../../../../geo/load/cure/say-cure.ts';
import { searchCures } from '../../../../geo/load/cure/search.ts';
import type { LoadItem } from '../../../../geo/load/list/load-list.ts';
import { CARD, thing, weighed } from '../load-card.ts';

const remedies = (items: readonly LoadItem[]) =>
  remediesFor(CARD, items, weighed(items), { marginKg: 0, left: 'left last' });
const water = (litres: number) =>
  thing('Fresh water', litres, 2.5, { place: 'Fresh tank', kind: 'fresh-water' });

describe('a way out taken step by step', () => {
  it('drains what relieves first, then takes the step that takes most off', () => {
    // 3000 kg empty on 3500: 100 of water, 300 and 250 of boxes are 150 over
    const items = [water(100), thing('box', 300, 2), thing('small box', 250, 2)];
    const [found] = greedy(remedies(items));
    expect(found?.drained.map(({ tank, litres }) => [tank.name, litres])).toEqual([['Fresh tank', 100]]);
    // 50 kg are left over: either box cures it, and the one that is met first is taken
    expect(found?.chosen.map(({ remedy }) => remedy.kind)).toEqual(['leave']);
    expect(found?.leftKg).toBe(400);
    expect(found?.movedKg).toBe(0);
  });

  it('does not empty a tank that relieves nothing', () => {
    const items = [water(20), thing('anvil', 520, 5.9)];
    const { drained } = greedy(remedies(items))[0] ?? { drained: [] };
    // gross 40 over: the tank's 20 kg are off it
    expect(drained).toHaveLength(1);
    const rearOnly = [thing('Fresh water', 20, -0.5, { kind: 'fresh-water' }), thing('anvil', 430, 5.5)];
    // water ahead of the front axle takes load off the rear one: drained, the rear would only be worse
    expect(greedy(remedies(rearOnly))[0]?.drained).toEqual([]);
  });

  it('leads nowhere where nobody listed may stay behind', () => {
    const people = [1, 2, 3, 4, 5, 6, 7].map((n) => thing(`Passenger ${n}`, 80, 3));
    expect(greedy(remedies(people))).toEqual([]);
  });

  it('is what is told where the trials run out, and is not said to be the smallest', () => {
    const items = [thing('box', 300, 2), thing('crate', 250, 2.2), thing('chest', 200, 2.4)];
    const { found, proved } = searchCures(remedies(items), { wanted: 3, trials: 2 });
    expect(proved).toBe(false);
    expect(found[0]?.chosen.length).toBeGreaterThan(0);
    expect(found[0]?.leastSpareKg).toBeGreaterThanOrEqual(-1e-6);
  });

  it('is not looked for where nothing is over', () => {
    expect(searchCures(remedies([thing('box', 100, 2)]), { wanted: 3, trials: 10 })).toEqual({
      found: [],
      proved: true,
    });
  });
});

describe('a way out in words', () => {
  const rack = { name: 'rack', xM: 6.3 };
  const bikes = thing('bikes', 40, 5);
  const moved = {
    steps: [{ kind: 'move', item: bikes, massKg: 40, to: rack }],
    leftKg: 0,
    movedKg: 40,
    items: [],
  } as const;

  it('calls the rack by its name, and says when no figure is left to tell', () => {
    expect(sayCure(moved)).toBe('move "bikes" (40 kg) to the rack');
    expect(sayCures({ needed: true, cures: [moved], proved: false })).toBe(
      'Move "bikes" (40 kg) to the rack. There may be a way with fewer steps.',
    );
  });

  it('says whether nothing helps or nothing was found', () => {
    expect(sayNoCure({ proved: false })).toBe(
      'No way out was found among so many items: leave the heaviest behind and try again.',
    );
    expect(sayNoRoom({ proved: false })).toBe(sayNoCure({ proved: false }));
    expect(sayNoRoom({ proved: true })).toBe(
      'Nothing else on board makes room for it: take less of it along, or put right first what is over already.',
    );
  });
});
