import { describe, expect, it } from 'vitest';
import type { LoadItem } from '../../../../geo/load/list/load-list.ts';
import {
  isGuessed,
  middleM,
  putAt,
  putExactly,
  putIn,
  spotOf,
  spotsFor,
  spotsOf,
} from '../../../../geo/load/places/spots.ts';
import { COACH_BUILT } from '../family.ts';

const BOX: LoadItem = { name: 'Box', massKg: 20, xM: 3.6, place: 'Wardrobe' };
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

describe('what nobody has placed', () => {
  it('goes to the middle, and is a guess until it is moved or named', () => {
    expect(middleM(COACH_BUILT)).toBeCloseTo(2.75, 9);
    const awning = { name: 'Awning', massKg: 45, xM: middleM(COACH_BUILT) };
    expect(isGuessed(COACH_BUILT, awning)).toBe(true);
    expect(isGuessed(COACH_BUILT, { ...awning, xM: 3 })).toBe(false);
    expect(isGuessed(COACH_BUILT, { ...awning, place: 'Kitchen' })).toBe(false);
  });
});

describe('the named places offered', () => {
  const named = (item: LoadItem) => spotsFor(COACH_BUILT, item).map(({ name }) => name);

  it('hold the tank of a liquid, and no tank for a thing', () => {
    expect(named({ name: 'Water', massKg: 20, xM: 2.4, kind: 'fresh-water' })).toContain('Fresh water tank');
    expect(named(BOX)).not.toContain('Fresh water tank');
    expect(named(BOX)).toEqual(expect.arrayContaining(['Garage', 'rack']));
  });

  it('are taken and left: at a distance alone an item keeps its metres', () => {
    expect(spotOf(COACH_BUILT, BOX)?.name).toBe('Wardrobe');
    expect(spotOf(COACH_BUILT, { ...BOX, place: 'Loft' })).toBeUndefined();
    expect(putIn(BOX, undefined)).toEqual({ name: 'Box', massKg: 20, xM: 3.6 });
  });

  it('take in what is typed at their very place, and its metres stay', () => {
    expect(putExactly(BOX, COACH_BUILT, 5.3512)).toMatchObject({ place: 'Garage', xM: 5.3512 });
    expect(putExactly(BOX, COACH_BUILT, 5.36)).not.toHaveProperty('place');
  });
});
