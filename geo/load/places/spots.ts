import type { VehicleCard } from '../../vehicle/card.ts';
import { type ItemKind, liquidOf } from '../list/item-kind.ts';
import type { LoadItem } from '../list/load-list.ts';
import type { Preset } from '../list/presets.ts';
import { isAt, isOnRack, rackPlace } from './stow-places.ts';

/** A named place of the vehicle. Metres rearwards from the front axle. */
export interface Spot {
  readonly name: string;
  readonly xM: number;
  readonly what: 'seat' | 'locker' | 'rack' | 'tank';
  readonly limitKg?: number | undefined;
}

/** Seats, lockers and the fitted rack: where people and things go. */
export function spotsOf(card: VehicleCard): Spot[] {
  const rack = rackPlace(card);
  return [
    ...(card.seats ?? []).map((seat) => ({ ...seat, what: 'seat' as const })),
    ...(card.lockers ?? []).map((locker) => ({ ...locker, what: 'locker' as const })),
    ...(rack ? [{ ...rack, what: 'rack' as const }] : []),
  ];
}

/** The tanks that hold what an item is. */
export function tanksFor(
  card: VehicleCard,
  item: { readonly name: string; readonly kind?: ItemKind },
): Spot[] {
  const liquid = liquidOf(item);
  return (card.tanks ?? [])
    .filter(({ holds }) => holds === liquid)
    .map(({ name, xM }) => ({ name, xM, what: 'tank' }));
}

export function putIn(item: LoadItem, { name, xM }: Spot): LoadItem {
  return { ...item, xM, place: name };
}

/**
 * An item put down at a distance, whole centimetres: in the named place there, if one is that near.
 * @param snapM how near a named place takes it in
 */
export function putAt(item: LoadItem, card: VehicleCard, xM: number, snapM: number): LoadItem {
  const at = Math.round(xM * 100) / 100;
  const isPerson = item.kind === 'person' || item.kind === 'driver';
  const near = spotsOf(card)
    .filter(({ what }) => (what === 'seat') === isPerson)
    .map((spot) => ({ spot, off: Math.abs(spot.xM - at) }))
    .filter(({ off }) => off <= snapM + 1e-9)
    .sort((a, b) => a.off - b.off)[0];
  if (near) return putIn(item, near.spot);
  const { place: _, ...loose } = item;
  return isOnRack({ xM: at }, card) ? { ...loose, xM: at, place: 'rack' } : { ...loose, xM: at };
}

/** Whether an item stands at that place: by its name, or behind the body for the rack. */
export function standsAt(item: LoadItem, spot: Spot, card: VehicleCard): boolean {
  return isAt(item, spot, card);
}

/** Where a thing usually goes: a free seat, the rack, or the locker with the most room left. undefined: nowhere named. */
export function usualSpot(
  card: VehicleCard,
  items: readonly LoadItem[],
  goes: Preset['goes'],
  kind: ItemKind,
): Spot | undefined {
  const spots = spotsOf(card);
  const seats = spots.filter(({ what }) => what === 'seat');
  if (goes === 'seat') {
    const free = seats.filter((seat) => !items.some((item) => standsAt(item, seat, card)));
    const isDriving = kind === 'driver' && card.runningOrder?.includesDriver !== true;
    if (isDriving) return free[0] ?? seats.at(-1);
    return free.find(({ name }) => !isDriverSeat(name)) ?? seats.at(-1);
  }
  if (goes === 'roof' || goes === 'outside') return undefined;
  const rack = spots.find(({ what }) => what === 'rack');
  if (goes === 'rack' && rack) return rack;
  const room = (spot: Spot) =>
    (spot.limitKg ?? 0) -
    items.reduce((sum, item) => sum + (standsAt(item, spot, card) ? item.massKg : 0), 0);
  const lockers = spots.filter(({ what }) => what === 'locker').sort((a, b) => room(b) - room(a));
  const gas = goes === 'gas-locker' ? lockers.find(({ name }) => /\bgas\b/i.test(name)) : undefined;
  return gas ?? lockers[0];
}

/**
 * People asked for at one seat sit on it and on the free seats after it, never on the seat of a driver whom the
 * running order holds; for whom none is left stays where it was asked.
 */
export function seatPeople(
  card: VehicleCard,
  items: readonly LoadItem[],
  people: readonly LoadItem[],
): readonly LoadItem[] {
  const seats = spotsOf(card).filter(({ what }) => what === 'seat');
  const [first] = people;
  if (!seats.some(({ name }) => name === first?.place)) return people;
  const free = seats.filter(
    (seat) =>
      seat.name !== first?.place &&
      !items.some((item) => standsAt(item, seat, card)) &&
      !(card.runningOrder?.includesDriver && isDriverSeat(seat.name)),
  );
  return people.map((person, i) => {
    const seat = i === 0 ? undefined : free[i - 1];
    return seat === undefined ? person : putIn(person, seat);
  });
}

/** The card marks it by its name alone. */
export function isDriverSeat(name: string): boolean {
  return /^driver\b/i.test(name);
}

/** Where something goes of which nothing is known: the middle of the vehicle. */
export function middleM(card: VehicleCard): number {
  const { frontOverhangM, lengthM } = card;
  return Math.round((lengthM / 2 - frontOverhangM) * 100) / 100;
}

/** Whether an item still stands where it was put for want of a place. */
export function isGuessed(card: VehicleCard, { place, xM }: LoadItem): boolean {
  return place === undefined && xM === middleM(card);
}
