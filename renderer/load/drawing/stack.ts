import { kindOf } from '../../../geo/load/item-kind.ts';
import type { LoadItem } from '../../../geo/load/load-list.ts';
import { isInTank } from '../../../geo/load/tanks.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';

/** One item as it is drawn: metres behind the front axle, and above the floor. */
export interface Block {
  readonly index: number;
  readonly item: LoadItem;
  readonly xM: number;
  /** its underside */
  readonly upM: number;
  readonly sideM: number;
  readonly person: boolean;
}

/** Side of the square for one kilogram: areas go by mass, 75 kg is 0.91 m. */
const SIDE_M_PER_ROOT_KG = 0.105;
const SIDE_LEAST_M = 0.16;
const SIDE_MOST_M = 1.8;
/** Where people sit, above the floor. */
const SEAT_UP_M = 0.42;
const GAP_M = 0.015;

export function sideOf(massKg: number, shrunk = 1): number {
  const side = SIDE_M_PER_ROOT_KG * Math.sqrt(Math.abs(massKg)) * shrunk;
  return Math.min(SIDE_MOST_M, Math.max(SIDE_LEAST_M * shrunk, side));
}

/**
 * Piles the items up: the heaviest lowest, each as low as what is under it lets it, people upon their seats. What
 * stands in a tank of the card is drawn there and not piled.
 * @param shrunk 1, or less where a pile would reach through the roof
 */
export function stackItems(items: readonly LoadItem[], card: VehicleCard, shrunk: number): Block[] {
  const piled = items
    .map((item, index) => ({ item, index, person: isPerson(item) }))
    .filter(({ item }) => !standsInTank(item, card))
    .sort(
      (a, b) =>
        Number(a.person) - Number(b.person) ||
        Math.abs(b.item.massKg) - Math.abs(a.item.massKg) ||
        a.index - b.index,
    );
  const laid: Block[] = [];
  for (const { item, index, person } of piled) {
    const sideM = sideOf(item.massKg, shrunk);
    const under = laid.filter(({ xM, sideM: side }) => Math.abs(xM - item.xM) < (side + sideM) / 2 - 1e-9);
    const upM = lowestGap(under, sideM, person ? SEAT_UP_M : 0);
    laid.push({ index, item, xM: item.xM, upM, sideM, person });
  }
  return laid.sort((a, b) => a.index - b.index);
}

/** The lowest height from which a side fits between what stands there. */
function lowestGap(there: readonly Block[], sideM: number, fromM: number): number {
  const sorted = [...there].sort((a, b) => a.upM - b.upM);
  let upM = fromM;
  for (const block of sorted) {
    if (block.upM >= upM + sideM - 1e-9) continue;
    upM = Math.max(upM, block.upM + block.sideM + GAP_M);
  }
  return upM;
}

/** How far the squares must shrink for every pile to stay under the roof; not without end. */
export function shrinkToFit(items: readonly LoadItem[], card: VehicleCard, roomM: number): number {
  for (let shrunk = 1; shrunk > 0.4; shrunk *= 0.86)
    if (stackItems(items, card, shrunk).every(({ upM, sideM }) => upM + sideM <= roomM)) return shrunk;
  return 0.4;
}

export function standsInTank(item: LoadItem, card: VehicleCard): boolean {
  return (card.tanks ?? []).some((tank) => isInTank(item, tank));
}

function isPerson(item: LoadItem): boolean {
  const kind = kindOf(item);
  return kind === 'person' || kind === 'driver';
}
