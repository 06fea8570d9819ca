import { describe, expect, it } from 'vitest';
import type { LoadItem } from '../../../../geo/load/list/load-list.ts';
import {
  isGuessed,
  middleM,
  putAt,
  putIn,
  seatPeople,
  spotsOf,
  usualSpot,
} from '../../../../geo/load/places/spots.ts';
import { COACH_BUILT, FAMILY } from '../family.ts';

const BOX: LoadItem = { name: 'Box', massKg: 20, xM: 3.6, place: 'Wardrobe' };
const people = (count: number): LoadItem[] =>
  Array.from({ length: count }, (_, i) => ({
    name: `Passenger ${i + 1}`,
    massKg: 75,
    xM: 0.35,
    kind: 'person',
    place: 'Beside the driver',
  }));
const GARAGE = spotsOf(COACH_BUILT).find(({ name }) => name === 'Garage');

describe('an item put down', () => {
  it('near a locker stands in it, farther off at a distance alone', () => {
    expect(putAt(BOX, COACH_BUILT, 5.3, 0.1)).toEqual({ ...BOX, xM: 5.35, place: 'Garage' });
    expect(putAt(BOX, COACH_BUILT, 5.1, 0.1)).toEqual({ name: 'Box', massKg: 20, xM: 5.1 });
  });

  it('steps past a locker by 5 cm and is not caught by it', () => {
    let box = BOX;
    for (let i = 0; i < 40; i++) box = putAt(box, COACH_BUILT, box.xM + 0.05, 0.004);
    expect(box.xM).toBeCloseTo(5.6, 9);
  });

  it('behind the body stands on the rack, wherever on it', () => {
    expect(putAt(BOX, COACH_BUILT, 6.6, 0)).toMatchObject({ xM: 6.6, place: 'rack' });
    const bare = { ...COACH_BUILT, rack: undefined } as unknown as typeof COACH_BUILT;
    expect(putAt(BOX, bare, 6.6, 0)).not.toHaveProperty('place');
  });

  it('takes a seat when it is a person, and a locker when it is not', () => {
    const child: LoadItem = { name: 'Child', massKg: 30, xM: 3, kind: 'person' };
    expect(putAt(child, COACH_BUILT, 1.76, 0.1).place).toBe('Bench, left');
    expect(putAt(BOX, COACH_BUILT, 1.76, 0.1).place).toBe('Under the bench');
  });

  it('keeps what it is: litres, kind and name', () => {
    const can: LoadItem = { name: 'Can', massKg: 10, xM: 1, kind: 'fresh-water', litres: 10 };
    if (!GARAGE) throw new Error('no garage');
    expect(putIn(can, GARAGE)).toEqual({ ...can, xM: 5.35, place: 'Garage' });
  });
});

describe('the usual place', () => {
  it('of a passenger is a free seat that is not the driver’s', () => {
    expect(usualSpot(COACH_BUILT, [], 'seat', 'person')?.name).toBe('Beside the driver');
    expect(usualSpot(COACH_BUILT, FAMILY, 'seat', 'person')?.name).toBe('Bench, left');
  });

  it('is not the driver’s seat either when every other is taken and the running order holds the driver', () => {
    const three = seatPeople(COACH_BUILT, [], people(3));
    expect(usualSpot(COACH_BUILT, three, 'seat', 'person')?.name).toBe('Bench, right');
  });

  it('of a gas cylinder is the gas locker, if the card names one', () => {
    expect(usualSpot(COACH_BUILT, [], 'gas-locker', 'thing')?.name).toBe('Gas locker');
    const without = { ...COACH_BUILT, lockers: [{ name: 'Garage', xM: 5.35 }] };
    expect(usualSpot(without, [], 'gas-locker', 'thing')?.name).toBe('Garage');
  });

  it('of a bicycle is the rack; where none is fitted, the locker with the most room left', () => {
    expect(usualSpot(COACH_BUILT, [], 'rack', 'thing')?.what).toBe('rack');
    const bare = { ...COACH_BUILT, rack: { lengthM: 0.7, widthM: 2, fitted: false } };
    expect(usualSpot(bare, [], 'rack', 'thing')?.name).toBe('Garage');
    const full = [{ name: 'Stones', massKg: 120, xM: 5.35, place: 'Garage' }];
    expect(usualSpot(bare, full, 'rack', 'thing')?.name).not.toBe('Garage');
  });

  it('of what goes outside is nowhere named, and then the middle', () => {
    expect(usualSpot(COACH_BUILT, [], 'outside', 'thing')).toBeUndefined();
    expect(middleM(COACH_BUILT)).toBeCloseTo(2.75, 9);
    const awning = { name: 'Awning', massKg: 45, xM: middleM(COACH_BUILT) };
    expect(isGuessed(COACH_BUILT, awning)).toBe(true);
    expect(isGuessed(COACH_BUILT, { ...awning, xM: 3 })).toBe(false);
    expect(isGuessed(COACH_BUILT, { ...awning, place: 'Kitchen' })).toBe(false);
  });
});

describe('several people at once', () => {
  it('take a seat each, the free ones after the first, and never that of the driver', () => {
    expect(seatPeople(COACH_BUILT, [], people(3)).map(({ place, xM }) => [place, xM])).toEqual([
      ['Beside the driver', 0.35],
      ['Bench, left', 1.75],
      ['Bench, right', 1.75],
    ]);
  });

  it('stay where they were asked for when no seat is left', () => {
    expect(seatPeople(COACH_BUILT, [], people(4)).at(-1)?.place).toBe('Beside the driver');
    const loose = people(2).map(({ place: _, ...each }) => each);
    expect(seatPeople(COACH_BUILT, [], loose)).toEqual(loose);
  });
});
