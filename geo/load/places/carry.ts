import type { Seat, VehicleCard } from '../../vehicle/card.ts';
import { isPerson, kindOf } from '../list/item-kind.ts';
import type { LoadItem } from '../list/load-list.ts';
import { isDriverSeat } from './seats.ts';
import { putAt, putIn, stepTo } from './spots.ts';

/** An item of a list that is being moved. */
export interface Carried {
  readonly item: LoadItem;
  /** the rest of the list: whose seats are taken */
  readonly others: readonly LoadItem[];
}

/**
 * An item carried along the vehicle to a distance: a thing to the place there, if one is near; a person to the nearest
 * free seat, and never off the seats.
 * @param xM metres rearwards from the front axle
 * @param snapM how near a named place takes a thing in
 */
export function carryTo(carried: Carried, card: VehicleCard, xM: number, snapM: number): LoadItem {
  const { item } = carried;
  const seats = seatsFor(carried, card);
  const [nearest] = seats
    .map((seat) => ({ seat, off: Math.abs(seat.xM - xM), own: seat.name === item.place ? 0 : 1 }))
    .sort((a, b) => a.off - b.off || a.own - b.own);
  return nearest ? putIn(item, nearest.seat) : putAt(item, card, xM, snapM);
}

/** An item moved by a step of the keys, metres; a person to the next free seat that way. */
export function carryBy(carried: Carried, card: VehicleCard, byM: number): LoadItem {
  const { item } = carried;
  const seats = [...seatsFor(carried, card)].sort((a, b) => a.xM - b.xM);
  if (seats.length === 0) return stepTo(item, card, item.xM + byM);
  const at = seats.findIndex(({ name }) => name === item.place);
  const next = at < 0 ? seats[0] : seats[at + Math.sign(byM)];
  return next ? putIn(item, next) : item;
}

/** The seats that somebody may sit on, the own one among them; none for a thing, and for people listed at a distance by name alone. */
function seatsFor({ item, others }: Carried, card: VehicleCard): readonly Seat[] {
  const seats = card.seats ?? [];
  // the word of the list, or a seat of its own: a guess by the name moves nothing
  const seated = item.kind !== undefined || seats.some(({ name }) => name === item.place);
  if (!seated || !isPerson(item)) return [];
  const drives = kindOf(item) === 'driver';
  return seats.filter(
    ({ name }) =>
      name === item.place || (isDriverSeat(name) === drives && !others.some(({ place }) => place === name)),
  );
}
