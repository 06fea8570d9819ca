import type { VehicleCard } from '../../vehicle/card.ts';
import type { ItemKind } from '../list/item-kind.ts';
import type { LoadItem } from '../list/load-list.ts';
import type { Goes } from '../list/presets.ts';
import { isDriverSeat } from './seats.ts';
import { putIn, type Spot, spotsOf } from './spots.ts';
import { isAt, massAt } from './stow-places.ts';

/** Where a thing usually goes: a free seat, the rack, or the locker with the most room left. undefined: nowhere named. */
export function usualSpot(
  card: VehicleCard,
  items: readonly LoadItem[],
  { goes, kind }: { readonly goes: Goes; readonly kind: ItemKind },
): Spot | undefined {
  switch (goes) {
    case 'seat':
      return usualSeat(card, items, kind);
    case 'roof':
    case 'outside':
      return undefined;
    case 'rack':
      return spotsOf(card).find(({ what }) => what === 'rack') ?? lockersByRoom(card, items)[0];
    case 'gas-locker': {
      const lockers = lockersByRoom(card, items);
      return lockers.find(({ name }) => isGasLocker(name)) ?? lockers[0];
    }
    case 'locker':
      return lockersByRoom(card, items)[0];
  }
}

function usualSeat(card: VehicleCard, items: readonly LoadItem[], kind: ItemKind): Spot | undefined {
  const seats = seatsOf(card);
  const free = seats.filter((seat) => !items.some((item) => isAt(item, seat, card)));
  const isDriving = kind === 'driver' && card.runningOrder?.includesDriver !== true;
  return free.find(({ name }) => isDriving || !isDriverSeat(name)) ?? seats.at(-1);
}

/** The lockers, the one with the most room left first. */
function lockersByRoom(card: VehicleCard, items: readonly LoadItem[]): Spot[] {
  const room = (spot: Spot) => (spot.limitKg ?? 0) - massAt(items, spot, card);
  const lockers = spotsOf(card).filter(({ what }) => what === 'locker');
  return lockers.sort((a, b) => room(b) - room(a));
}

/** The card marks it by its name alone. */
function isGasLocker(name: string): boolean {
  return /\bgas\b/i.test(name);
}

function seatsOf(card: VehicleCard): Spot[] {
  return spotsOf(card).filter(({ what }) => what === 'seat');
}

/**
 * People asked for at one seat sit on it and on the free seats after it, never on the seat of a driver whom the
 * empty weight holds; for whom none is left stays where it was asked.
 */
export function seatPeople(
  card: VehicleCard,
  items: readonly LoadItem[],
  people: readonly LoadItem[],
): readonly LoadItem[] {
  const seats = seatsOf(card);
  const [first] = people;
  if (!seats.some(({ name }) => name === first?.place)) return people;
  const free = seats.filter(
    (seat) =>
      seat.name !== first?.place &&
      !items.some((item) => isAt(item, seat, card)) &&
      !(card.runningOrder?.includesDriver && isDriverSeat(seat.name)),
  );
  return people.map((person, i) => {
    const seat = i === 0 ? undefined : free[i - 1];
    return seat === undefined ? person : putIn(person, seat);
  });
}
