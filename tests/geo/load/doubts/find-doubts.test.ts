import { describe, expect, it } from 'vitest';
import type { Doubt } from '../../../../geo/load/doubts/doubt.ts';
import { loadAsItStands, loadWithDoubts } from '../../../../geo/load/doubts/load-with-doubts.ts';
import { sayEstimated } from '../../../../geo/load/doubts/say-doubt.ts';
import type { LoadItem } from '../../../../geo/load/list/load-list.ts';
import { setTank } from '../../../../geo/load/places/in-tank.ts';
import { spotsFor, spotsOf } from '../../../../geo/load/places/spots.ts';
import { stowPlaces } from '../../../../geo/load/places/stow-places.ts';
import { sayLevels, sayTank } from '../../../../geo/load/tanks/say-tanks.ts';
import type { TankTold } from '../../../../geo/load/tanks/tell-tank.ts';
import { unladenFrom } from '../../../../geo/load/weigh/load-card.ts';
import type { VehicleCard } from '../../../../geo/vehicle/card.ts';
import { CARD, curesOf, HEAVY, thing, WATER, weighed } from '../load-card.ts';

function doubts(items: readonly LoadItem[], card = CARD): readonly Doubt[] {
  const found = loadAsItStands(card, items);
  if (!found.ok) throw new Error(found.error.message);
  return found.value.doubts;
}

describe('a doubt', () => {
  it('carries its kind and its figures: which plate, and by how much', () => {
    expect(doubts([thing('box', 520, 4)])).toEqual([
      { kind: 'over plate', limit: 'gross', loadKg: 3520, plateKg: 3500, overKg: 20 },
    ]);
  });

  it('comes with the gravest first: plates before the rack, the rack before what is counted twice', () => {
    const items = [thing('Driver', 75, 0.4), thing('bikes', 500, 6.3)];
    expect(doubts(items).map(({ kind }) => kind)).toEqual([
      'over plate',
      'over plate',
      'over rack',
      'driver twice',
      'little in front',
    ]);
  });

  it('names what it is about as it is listed, however long', () => {
    const name = 'x'.repeat(200);
    expect(doubts([thing(name, 5, -1.2)])).toEqual([
      { kind: 'ahead of the vehicle', item: name, byM: expect.closeTo(0.25, 9) },
    ]);
    expect(weighed([thing(name, 5, -1.2)]).warnings[0]?.length).toBeLessThan(160);
  });

  it('about what the tanks do on the way tells the moment and each limit', () => {
    // 80 l from 2.5 m to 5.4 m behind the front axle, wheelbase 4 m: 58 kg more on the rear axle
    const items = [...setTank(CARD, [], WATER, 80), thing('garage', 110, 5.2, { place: 'Garage' })];
    const card = { ...HEAVY, axleKg: { front: 2100, rear: weighed(items, HEAVY).rearKg + 20 } };
    const found = loadWithDoubts(card, items);
    expect(found.ok && found.value.doubts).toEqual([
      {
        kind: 'over on the way',
        moment: 'used into the waste tank',
        over: [{ limit: 'rear', overKg: expect.closeTo(38, 6) }],
      },
    ]);
  });
});

describe('an odd load', () => {
  it('may lift wheels: far behind the rear axle the front ones, far ahead of the front axle the rear ones', () => {
    // 1550 kg on the front axle, wheelbase 4 m: 4000 kg 1.6 m behind the rear axle take 1600 off it
    expect(weighed([thing('anvil', 4000, 5.6)]).warnings).toContain(
      'As listed the front wheels would lift off the ground. Check masses and places.',
    );
    // 1450 kg on the rear: 8000 kg 0.8 m ahead of the front axle take 1600 off it
    expect(doubts([thing('anvil', 8000, -0.8)])).toContainEqual({ kind: 'wheels lift', axle: 'rear' });
  });

  it('may stand too much on the front axle for a builder’s handbook', () => {
    // 3150 and 1150 of 4300 kg: 73 %
    const found = weighed([thing('anvil', 1300, -0.9231)], HEAVY).warnings.join(' ');
    expect(found).toMatch(/7\d % of the mass stands on the front axle; .* Load further back\./);
  });

  it('may count fuel twice: 90 % of it are in the empty weight', () => {
    const can = thing('Diesel', 60, 2, { kind: 'fuel' });
    expect(weighed([can]).warnings).toContain(
      '"Diesel" is listed, and the empty weight on the card holds 90 % of the fuel: count only what is beyond it.',
    );
  });

  it('rests on a guess where nothing was weighed, and says so', () => {
    expect(sayEstimated({ kind: 'estimated', of: 'axles and total', totalKg: 3190 })).toMatch(
      /^Estimate: nothing was weighed\. The empty weight is taken as 3190 kg, 91 % of the plated gross mass/,
    );
  });
});

describe('an empty weight from a weighbridge', () => {
  const fuel = { name: 'Fuel tank', holds: 'fuel', xM: 1, capacityL: 100 } as const;
  it('is without fuel, driver and fresh water, each as it was aboard', () => {
    // 90 l of 0.83 kg are 74.7 kg, a driver 75, a full tank of 120 l of water 120
    const card = { tanks: [WATER, fuel] };
    expect(unladenFrom(card, 3000, { driver: true, freshWater: true })).toBe(2730);
    expect(unladenFrom(card, 3000, { driver: false, freshWater: false })).toBe(2925);
    // no tanks on the card: 67.5 l of fuel, common practice, 56 kg
    expect(unladenFrom({}, 3000, { driver: false, freshWater: true })).toBe(2944);
  });
});

describe('tanks in words', () => {
  it('say what is in them, until when they may be filled and what filling does', () => {
    expect(sayLevels([])).toBe('');
    expect(sayLevels([{ tank: WATER, litres: 99.6 }])).toBe('Fresh tank 100 litres');
    const told = { tank: WATER, litres: 0, kg: 0 } as unknown as TankTold;
    expect(sayTank(told)).toEqual([]);
    expect(sayTank({ ...told, reach: { kind: 'full keeps all' } })).toEqual(['Full, it keeps every plate.']);
    expect(sayTank({ ...told, reach: { kind: 'reached at', litres: 60.9, limit: 'gross' } })).toEqual([
      'At 60 litres the gross plate is reached.',
    ]);
    expect(sayTank({ ...told, reach: { kind: 'over even empty', limit: 'rear' } })).toEqual([
      'The rear axle plate is over even with it empty.',
    ]);
    expect(sayTank({ ...told, reach: { kind: 'reached even empty', limit: 'rear' } })).toEqual([
      'The rear axle plate is reached even with it empty.',
    ]);
    const share = { frontKg: 45, rearKg: 75 };
    expect(sayTank({ ...told, todo: { kind: 'fill', share } } as TankTold)).toEqual([
      'Filling it up: front +45, rear +75 kg.',
    ]);
    expect(sayTank({ ...told, todo: { kind: 'empty', share } } as TankTold)[0]).toContain('Emptying it');
  });
});

describe('a card without tanks, seats and lockers', () => {
  const { tanks: _, lockers: __, seats: ___, rack: ____, ...bare } = CARD;
  const box = thing('box', 520, 4);

  it('has no places to put anything at and none to move it to: it can only stay behind', () => {
    expect(spotsOf(bare)).toEqual([]);
    expect(spotsFor(bare, thing('Fresh water', 10, 2, { kind: 'fresh-water' }))).toEqual([]);
    expect(stowPlaces(bare)).toEqual([]);
    expect(cureSteps(bare, [box])).toEqual([['leave', 'box']]);
  });

  it('can have water drained that is listed loose, as much as is over and not more', () => {
    const can = thing('Water can', 60, 3, { kind: 'fresh-water' });
    const [cure] = curesOf([thing('person', 450, 3, { kind: 'person' }), can], bare).cures;
    // 3000 + 450 + 60 on 3500: 10 over
    expect(cure?.steps).toMatchObject([{ kind: 'drain', litres: 10 }]);
    expect(cure?.items.map(({ name, massKg }) => [name, massKg])).toEqual([
      ['person', 450],
      ['Water can', 50],
    ]);
  });
});

function cureSteps(card: VehicleCard, items: readonly LoadItem[]) {
  const [cure] = curesOf(items, card).cures;
  return cure?.steps.map((step) => [step.kind, step.kind === 'drain' ? step.name : step.item.name]);
}
