import type { VehicleCard } from '../../vehicle/card.ts';
import { RACK } from '../../vehicle/place-names.ts';
import type { LoadItem } from '../list/load-list.ts';

/** What a rack takes where the card does not say: 60 kg is what hire firms allow on theirs (common practice, no source). */
const RACK_LIMIT_KG = 60;

/** A place of the vehicle for things. Metres rearwards from the front axle. */
export interface StowPlace {
  readonly name: string;
  readonly xM: number;
  readonly limitKg?: number | undefined;
}

/** Where the body ends, metres behind the front axle. */
export function tailM(card: Pick<VehicleCard, 'wheelbaseM' | 'rearOverhangM'>): number {
  return card.wheelbaseM + card.rearOverhangM;
}

/** The fitted rack as a place: a load on it is taken at its middle. undefined without one. */
export function rackPlace(card: VehicleCard): (StowPlace & { readonly limitKg: number }) | undefined {
  const { rack } = card;
  if (!rack?.fitted) return undefined;
  return { name: RACK, xM: tailM(card) + rack.lengthM / 2, limitKg: rack.limitKg ?? RACK_LIMIT_KG };
}

/** The lockers of the card, and the rack where it is fitted. */
export function stowPlaces(card: VehicleCard): StowPlace[] {
  const rack = rackPlace(card);
  return [...(card.lockers ?? []), ...(rack === undefined ? [] : [rack])];
}

/** Whether an item stands on the rack: a rack is fitted and the item lies behind the body. */
export function isOnRack(item: Pick<LoadItem, 'xM'>, card: VehicleCard): boolean {
  return card.rack?.fitted === true && item.xM > tailM(card);
}

/** Whether an item stands at that place of the card: by its name, or behind the body for the rack. */
export function isAt(item: Pick<LoadItem, 'xM' | 'place'>, place: StowPlace, card: VehicleCard): boolean {
  return place.name === RACK ? isOnRack(item, card) : item.place === place.name;
}

/** What stands at a place of the card, kilograms. */
export function massAt(items: readonly LoadItem[], place: StowPlace, card: VehicleCard): number {
  return items.reduce((sum, item) => sum + (isAt(item, place, card) ? item.massKg : 0), 0);
}
