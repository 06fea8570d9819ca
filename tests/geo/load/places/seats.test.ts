import { describe, expect, it } from 'vitest';
import type { LoadItem } from '../../../../geo/load/list/load-list.ts';
import { drawnDriver, seatSomebody, seatTaken } from '../../../../geo/load/places/seats.ts';
import type { Seat, VehicleCard } from '../../../../geo/vehicle/card.ts';
import { COACH_BUILT } from '../family.ts';

const seat = (name: string): Seat => {
  const found = COACH_BUILT.seats?.find((each) => each.name === name);
  if (!found) throw new Error(`no seat ${name}`);
  return found;
};
const DRIVER = seat('Driver');
const LEFT = seat('Bench, left');
const EMPTY = { frontKg: 1590, rearKg: 1490, includesDriver: false, includesFreshWater: false };
const ALONE: VehicleCard = { ...COACH_BUILT, runningOrder: EMPTY };

describe('a seat', () => {
  it('that nobody sits on holds nothing; somebody put on it is listed at its place', () => {
    expect(seatTaken(COACH_BUILT, [], LEFT)).toMatchObject({ massKg: 0, countedKg: 0 });
    const [item] = seatSomebody(COACH_BUILT, [], LEFT, 68);
    expect(item).toMatchObject({ massKg: 68, xM: LEFT.xM, kind: 'person', place: 'Bench, left' });
  });

  it('changes whom it holds in place, and is free again with nothing on it', () => {
    const box: LoadItem = { name: 'Box', massKg: 9, xM: 3 };
    const some = [...seatSomebody(COACH_BUILT, [], LEFT, 68), box];
    const other = seatSomebody(COACH_BUILT, some, LEFT, 80);
    expect(other.map(({ massKg }) => massKg)).toEqual([80, 9]);
    expect(seatSomebody(COACH_BUILT, other, LEFT, 0)).toEqual([box]);
  });

  it('counts whoever else is listed on it', () => {
    const [one] = seatSomebody(COACH_BUILT, [], LEFT, 68);
    if (!one) throw new Error('nobody');
    const { others, listed } = seatTaken(COACH_BUILT, [one, { ...one, name: 'Ben', massKg: 50 }], LEFT);
    expect(listed).toBe(one);
    expect(others).toEqual({ count: 1, massKg: 50 });
  });
});

describe('the driver’s seat', () => {
  it('of an empty weight that holds the driver shows 75 kg and lists only what is beyond', () => {
    expect(seatTaken(COACH_BUILT, [], DRIVER)).toMatchObject({ countedKg: 75, massKg: 75 });
    const items = seatSomebody(COACH_BUILT, [], DRIVER, 95);
    expect(items).toMatchObject([{ name: 'Driver beyond 75 kg', massKg: 20, kind: 'person' }]);
    expect(seatTaken(COACH_BUILT, items, DRIVER).massKg).toBe(95);
    expect(seatSomebody(COACH_BUILT, items, DRIVER, 75)).toEqual([]);
  });

  it('of an empty weight without the driver lists the whole driver', () => {
    expect(seatTaken(ALONE, [], DRIVER).massKg).toBe(0);
    expect(seatSomebody(ALONE, [], DRIVER, 80)).toMatchObject([
      { name: 'Driver', massKg: 80, kind: 'driver' },
    ]);
  });
});

describe('the driver that the empty weight holds', () => {
  it('is drawn on the driver’s seat, or where one usually sits, until somebody is listed there', () => {
    expect(drawnDriver(COACH_BUILT, [])).toMatchObject({ kind: 'driver', massKg: 75, xM: DRIVER.xM });
    const { seats: _, ...seatless } = COACH_BUILT;
    expect(drawnDriver(seatless, [])).toMatchObject({ kind: 'driver', xM: 0.3 });
    expect(drawnDriver(seatless, [{ name: 'Ann', massKg: 70, xM: 0.3, kind: 'driver' }])).toBeUndefined();
    expect(drawnDriver(COACH_BUILT, [{ name: 'Ann', massKg: 5, xM: 0.3, place: 'Driver' }])).toBeUndefined();
    expect(drawnDriver(ALONE, [])).toBeUndefined();
  });
});
