import { largest } from '../../../geo/lists.ts';
import { isPerson } from '../../../geo/load/list/item-kind.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { isInTank } from '../../../geo/load/places/in-tank.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';

/** One item as it is drawn: metres behind the front axle, and above the floor. */
export interface Block {
  readonly index: number;
  readonly item: LoadItem;
  readonly xM: number;
  /** its underside */
  readonly upM: number;
  readonly wideM: number;
  readonly highM: number;
  readonly person: boolean;
  /** of people abreast: 0 in front, 1 behind that, and so on */
  readonly row: number;
}

/** Side of the square for one kilogram: areas go by mass, 75 kg is 0.91 m. */
const SIDE_M_PER_ROOT_KG = 0.105;
const SIDE_LEAST_M = 0.16;
const SIDE_MOST_M = 1.8;
/** A thing is drawn wider than high, so that its name has room. */
const BOX_WIDER = 1.1;
/** Where people sit, above the floor. */
const SEAT_UP_M = 0.42;
const GAP_M = 0.015;
/** Of a person's square, the head. */
export const HEAD_SHARE = 0.4;

function sideOf(massKg: number, shrunk: number): number {
  const side = SIDE_M_PER_ROOT_KG * Math.sqrt(Math.abs(massKg)) * shrunk;
  return Math.min(SIDE_MOST_M, Math.max(SIDE_LEAST_M * shrunk, side));
}

/**
 * Piles the things up, the heaviest lowest, each as low as what is under it lets it. People sit upon their seats, in
 * front of the things; of those abreast each farther one is drawn behind, head and shoulders higher. What stands in a
 * tank of the card is drawn there and not piled.
 * @param shrunk 1, or less where a pile would reach through the roof
 * @returns in the order they are drawn: what is in front comes last
 */
export function stackItems(items: readonly LoadItem[], card: VehicleCard, shrunk: number): Block[] {
  const all = items
    .map((item, index) => sized(item, index, shrunk))
    .filter(({ item }) => !standsInTank(item, card));
  const things: Block[] = [];
  const heaviestFirst = all
    .filter(({ person }) => !person)
    .sort((a, b) => Math.abs(b.item.massKg) - Math.abs(a.item.massKg) || a.index - b.index);
  for (const each of heaviestFirst)
    things.push({ ...each, upM: lowestGap(overlapping(things, each), each.highM, 0), row: 0 });
  const people: Block[] = [];
  // the driver sits nearest
  const seated = all.filter(({ person }) => person);
  seated.sort((a, b) => Number(b.item.kind === 'driver') - Number(a.item.kind === 'driver'));
  for (const each of seated) {
    const row = 1 + Math.max(-1, largest(overlapping(people, each).map((other) => other.row)));
    people.push({ ...each, upM: SEAT_UP_M + row * HEAD_SHARE * each.highM, row });
  }
  return [...things.sort((a, b) => a.index - b.index), ...people.reverse()];
}

/**
 * As somebody tells it who goes along the vehicle from its front, each pile from below. Elements are not put in this
 * order: one that is carried past another would leave the hand.
 */
export function frontToRear(a: Block, b: Block): number {
  return a.xM - b.xM || a.upM - b.upM || a.index - b.index;
}

function sized(item: LoadItem, index: number, shrunk: number): Omit<Block, 'upM' | 'row'> {
  const person = isPerson(item);
  const side = sideOf(item.massKg, shrunk);
  const wider = person ? 1 : BOX_WIDER;
  return { index, item, xM: item.xM, wideM: side * wider, highM: side / wider, person };
}

function overlapping(
  laid: readonly Block[],
  { xM, wideM }: { readonly xM: number; readonly wideM: number },
): Block[] {
  return laid.filter((each) => Math.abs(each.xM - xM) < (each.wideM + wideM) / 2 - 1e-9);
}

/** The lowest height from which so much fits between what stands there. */
function lowestGap(there: readonly Block[], highM: number, fromM: number): number {
  const sorted = [...there].sort((a, b) => a.upM - b.upM);
  let upM = fromM;
  for (const block of sorted) {
    if (block.upM >= upM + highM - 1e-9) continue;
    upM = Math.max(upM, block.upM + block.highM + GAP_M);
  }
  return upM;
}

/** How far the blocks must shrink for every pile to stay under the roof; not without end. */
export function shrinkToFit(items: readonly LoadItem[], card: VehicleCard, roomM: number): number {
  // what has a larger face than the vehicle's inside cannot fit: nothing need be piled to see it
  const insideM2 = roomM * (card.lengthM + 2 * SIDE_MOST_M);
  const faceM2 = SIDE_M_PER_ROOT_KG ** 2 * items.reduce((sum, { massKg }) => sum + Math.abs(massKg), 0);
  for (let shrunk = 1; shrunk > 0.4; shrunk *= 0.86)
    if (faceM2 * shrunk ** 2 > insideM2) continue;
    else if (stackItems(items, card, shrunk).every(({ upM, highM }) => upM + highM <= roomM)) return shrunk;
  return 0.4;
}

function standsInTank(item: LoadItem, card: VehicleCard): boolean {
  return (card.tanks ?? []).some((tank) => isInTank(item, tank));
}
