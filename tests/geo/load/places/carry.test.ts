import { describe, expect, it } from 'vitest';
import { carryBy, carryTo } from '../../../../geo/load/places/carry.ts';
import { CARD, thing } from '../load-card.ts';

const SEATED = {
  ...CARD,
  seats: [
    { name: 'Driver', xM: 0.3 },
    { name: 'Beside the driver', xM: 0.3 },
    { name: 'Bench, left', xM: 1.5 },
    { name: 'Bench, right', xM: 1.5 },
  ],
};
const child = thing('Child', 30, 1.5, { kind: 'person', place: 'Bench, left' });
const other = thing('Other', 60, 1.5, { kind: 'person', place: 'Bench, right' });

describe('somebody carried along the vehicle', () => {
  it('sits on the nearest free seat, wherever they are let go', () => {
    for (const xM of [-3, 0.1, 0.8])
      expect(carryTo({ item: child, others: [other] }, SEATED, xM, 0.1).place).toBe('Beside the driver');
    for (const xM of [0.95, 1.5, 5, 9]) {
      const put = carryTo({ item: child, others: [other] }, SEATED, xM, 0.1);
      expect([put.place, put.xM]).toEqual(['Bench, left', 1.5]);
    }
  });

  it('takes nobody’s seat, and not the driver’s', () => {
    const beside = thing('Mate', 70, 0.3, { kind: 'person', place: 'Beside the driver' });
    const put = carryTo({ item: child, others: [other, beside] }, SEATED, 0.3, 0.1);
    expect(put.place).toBe('Bench, left');
  });

  it('by the keys goes from seat to seat, and at the last stays', () => {
    const first = carryBy({ item: child, others: [] }, SEATED, -0.05);
    expect(first.place).toBe('Beside the driver');
    expect(carryBy({ item: first, others: [] }, SEATED, -0.05)).toEqual(first);
    expect(carryBy({ item: first, others: [] }, SEATED, 0.05).place).toBe('Bench, left');
    expect(carryBy({ item: child, others: [] }, SEATED, 0.5).place).toBe('Bench, right');
  });

  it('the driver stays at the wheel', () => {
    const driver = thing('Driver', 90, 0.3, { kind: 'driver', place: 'Driver' });
    expect(carryTo({ item: driver, others: [] }, SEATED, 4, 0.1)).toEqual(driver);
  });

  it('of a card without seats stands where they are put, and so does a thing', () => {
    expect(carryTo({ item: child, others: [] }, { ...CARD, seats: undefined }, 3, 0.1).xM).toBe(3);
    const box = thing('Box', 20, 3);
    expect(carryTo({ item: box, others: [] }, SEATED, 5.15, 0.1).place).toBe('Garage');
    expect(carryBy({ item: box, others: [] }, SEATED, 0.05).xM).toBe(3.05);
  });
});
