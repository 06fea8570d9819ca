import type { VehicleCard } from '../../vehicle/card.ts';
import { RACK } from '../../vehicle/place-names.ts';
import { isPerson, liquidOf } from '../list/item-kind.ts';
import type { LoadItem } from '../list/load-list.ts';
import { isAt, isOnRack, rackPlace, type StowPlace } from './stow-places.ts';

/** A named place of the vehicle. Metres rearwards from the front axle. */
export interface Spot extends StowPlace {
  readonly what: 'seat' | 'locker' | 'rack' | 'tank';
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

/** The named places that an item may be put at: seats, lockers, the fitted rack, and the tanks that hold what it is. */
export function spotsFor(card: VehicleCard, item: LoadItem): Spot[] {
  const liquid = liquidOf(item);
  const tanks = (card.tanks ?? []).filter(({ holds }) => holds === liquid);
  return [...spotsOf(card), ...tanks.map(({ name, xM }): Spot => ({ name, xM, what: 'tank' }))];
}

/** The named place that an item stands at; undefined where it stands at a distance alone. */
export function spotOf(card: VehicleCard, item: LoadItem): Spot | undefined {
  return spotsFor(card, item).find((spot) => isAt(item, spot, card));
}

/** The item at a named place; at a distance alone where there is none. */
export function putIn(item: LoadItem, spot: StowPlace | undefined): LoadItem {
  if (spot) return { ...item, xM: spot.xM, place: spot.name };
  const { place: _, ...loose } = item;
  return loose;
}

/**
 * An item put down at a distance, whole centimetres: in the named place there, if one is that near.
 * @param xM metres rearwards from the front axle
 * @param snapM how near a named place takes it in
 */
export function putAt(item: LoadItem, card: VehicleCard, xM: number, snapM: number): LoadItem {
  const at = Math.round(xM * 100) / 100;
  // the word of the list alone: a guess by the name moves nothing
  const sits = item.kind !== undefined && isPerson(item);
  const near = spotsOf(card)
    .filter(({ what }) => (what === 'seat') === sits)
    .map((spot) => ({ spot, off: Math.abs(spot.xM - at) }))
    .filter(({ off }) => off <= snapM + 1e-9)
    .sort((a, b) => a.off - b.off)[0];
  if (near) return putIn(item, near.spot);
  const loose = { ...putIn(item, undefined), xM: at };
  return isOnRack(loose, card) ? { ...loose, place: RACK } : loose;
}

/** As near as a typed distance must come for a place to be meant. Metres. */
const TYPED_SNAP_M = 0.004;

/** An item at a distance as typed, to the millimetre and finer: a named place there takes it in, and its metres stay. */
export function putExactly(item: LoadItem, card: VehicleCard, xM: number): LoadItem {
  return { ...putAt(item, card, xM, TYPED_SNAP_M), xM };
}

/** An item moved by a step of the keys: it is not caught by a place it only comes near. */
export function stepTo(item: LoadItem, card: VehicleCard, xM: number): LoadItem {
  return putAt(item, card, xM, TYPED_SNAP_M);
}

/** Where something goes of which nothing is known: the middle of the vehicle. Metres rearwards from the front axle. */
export function middleM(card: VehicleCard): number {
  const { frontOverhangM, lengthM } = card;
  return Math.round((lengthM / 2 - frontOverhangM) * 100) / 100;
}

/** Whether an item still stands where it was put for want of a place. */
export function isGuessed(card: VehicleCard, { place, xM }: LoadItem): boolean {
  return place === undefined && xM === middleM(card);
}
