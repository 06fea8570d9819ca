import { describe, expect, it } from 'vitest';
import type { LoadItem } from '../../../../geo/load/list/load-list.ts';
import { seatPeople, usualSpot } from '../../../../geo/load/places/usual-spot.ts';
import { COACH_BUILT, FAMILY } from '../family.ts';
import { CARD, thing } from '../load-card.ts';

const people = (count: number): LoadItem[] =>
  Array.from({ length: count }, (_, i) => ({
    name: `Passenger ${i + 1}`,
    massKg: 75,
    xM: 0.35,
    kind: 'person',
    place: 'Beside the driver',
  }));

describe('the usual place', () => {
  it('of a passenger is a free seat that is not the driver’s', () => {
    expect(usualSpot(COACH_BUILT, [], { goes: 'seat', kind: 'person' })?.name).toBe('Beside the driver');
    expect(usualSpot(COACH_BUILT, FAMILY, { goes: 'seat', kind: 'person' })?.name).toBe('Bench, left');
  });

  it('is not the driver’s seat either when every other is taken and the empty weight holds the driver', () => {
    const three = seatPeople(COACH_BUILT, [], people(3));
    expect(usualSpot(COACH_BUILT, three, { goes: 'seat', kind: 'person' })?.name).toBe('Bench, right');
  });

  it('of a gas cylinder is the gas locker, if the card names one', () => {
    expect(usualSpot(COACH_BUILT, [], { goes: 'gas-locker', kind: 'thing' })?.name).toBe('Gas locker');
    const without = { ...COACH_BUILT, lockers: [{ name: 'Garage', xM: 5.35 }] };
    expect(usualSpot(without, [], { goes: 'gas-locker', kind: 'thing' })?.name).toBe('Garage');
  });

  it('of a bicycle is the rack; where none is fitted, the locker with the most room left', () => {
    expect(usualSpot(COACH_BUILT, [], { goes: 'rack', kind: 'thing' })?.what).toBe('rack');
    const bare = { ...COACH_BUILT, rack: { lengthM: 0.7, widthM: 2, fitted: false } };
    expect(usualSpot(bare, [], { goes: 'rack', kind: 'thing' })?.name).toBe('Garage');
    const full = [{ name: 'Stones', massKg: 120, xM: 5.35, place: 'Garage' }];
    expect(usualSpot(bare, full, { goes: 'rack', kind: 'thing' })?.name).not.toBe('Garage');
  });

  it('of what goes outside is nowhere named', () => {
    expect(usualSpot(COACH_BUILT, [], { goes: 'outside', kind: 'thing' })).toBeUndefined();
    expect(usualSpot(COACH_BUILT, [], { goes: 'roof', kind: 'thing' })).toBeUndefined();
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

it('the usual place of a thing is the locker with the most room left, of a driver whom nobody counts the driver’s seat', () => {
  expect(usualSpot(CARD, [], { goes: 'locker', kind: 'thing' })?.name).toBe('Garage');
  const packed = [thing('tools', 140, 5.2, { place: 'Garage' })];
  expect(usualSpot(CARD, packed, { goes: 'locker', kind: 'thing' })?.name).toBe('Nose');
  const alone = {
    ...COACH_BUILT,
    runningOrder: { frontKg: 1590, rearKg: 1490, includesDriver: false, includesFreshWater: false },
  };
  expect(usualSpot(alone, [], { goes: 'seat', kind: 'driver' })?.name).toBe('Driver');
});
