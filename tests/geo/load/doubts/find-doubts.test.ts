import { describe, expect, it } from 'vitest';
import type { Doubt } from '../../../../geo/load/doubts/doubt.ts';
import { loadAsItStands, loadWithDoubts } from '../../../../geo/load/doubts/load-with-doubts.ts';
import type { LoadItem } from '../../../../geo/load/list/load-list.ts';
import { setTank } from '../../../../geo/load/places/in-tank.ts';
import { CARD, HEAVY, thing, WATER, weighed } from '../load-card.ts';

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
