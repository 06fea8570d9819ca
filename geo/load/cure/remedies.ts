import type { VehicleCard } from '../../vehicle/card.ts';
import { LIQUID_FACTS, type Liquid } from '../../vehicle/liquids.ts';
import { kindOf, liquidOf } from '../list/item-kind.ts';
import type { LoadItem } from '../list/load-list.ts';
import { type Need, needOf } from '../list/need.ts';
import { isInTank, litresIn, setTank } from '../places/in-tank.ts';
import { isAt, massAt, type StowPlace, stowPlaces } from '../places/stow-places.ts';
import { axleShare } from '../weigh/axle-loads.ts';
import type { LoadFigures } from '../weigh/figures.ts';
import type { Row } from './row.ts';
import { changed } from './row.ts';

/** One thing that could be done. */
export interface Remedy {
  readonly kind: 'move' | 'leave';
  readonly to?: StowPlace;
  /** what it adds to each limit's load; negative relieves */
  readonly change: Row;
}

/** An item that may be handled: each way of doing so. */
export interface Handled {
  readonly item: LoadItem;
  readonly remedies: readonly Remedy[];
}

/** Water that may be drained, litre by litre. */
export interface Drained {
  readonly name: string;
  readonly kgPerL: number;
  readonly litres: number;
  readonly changePerL: Row;
  /** the items with so many litres drained from it */
  drain(items: readonly LoadItem[], litres: number): LoadItem[];
}

export interface Remedies {
  /** load minus limit for each limit: positive is over */
  readonly over: Row;
  readonly handled: readonly Handled[];
  readonly drained: readonly Drained[];
}

/** How a cure is looked for. */
export interface CureWay {
  /** kilograms to be left on each plate */
  readonly marginKg: number;
  /** what may be left behind besides what is easily done without */
  readonly left: Exclude<Need, 'never left'>;
}

/** What a mass at a place adds to each limit's load. */
type ChangeOf = (massKg: number, xM: number, isIn: (place: StowPlace) => boolean) => number[];

/** What of a load may be moved, left behind or drained. People, fuel, gas and what is taken off stay as they are. */
export function remediesFor(
  card: VehicleCard,
  items: readonly LoadItem[],
  { spare }: Pick<LoadFigures, 'spare'>,
  { marginKg, left }: CureWay,
): Remedies {
  const limited = limitedPlaces(card);
  const changeOf: ChangeOf = (massKg, xM, isIn) => {
    const { frontKg, rearKg } = axleShare({ massKg, xM }, card.wheelbaseM);
    return [massKg, frontKg, rearKg, ...limited.map((each) => (isIn(each) ? massKg : 0))];
  };
  return {
    over: overBy(card, items, { spare }, marginKg),
    handled: items
      .filter((item) => item.massKg > 0 && kindOf(item) === 'thing')
      .map((item) => ({ item, remedies: remediesOf(card, item, changeOf, mayBeLeft(item, left)) }))
      .filter(({ remedies }) => remedies.length > 0),
    drained: drainsOf(card, items).map(({ xM, ...each }) => ({
      ...each,
      changePerL: changeOf(-each.kgPerL, xM, () => false),
    })),
  };
}

type Limited = StowPlace & { readonly limitKg: number };

function limitedPlaces(card: VehicleCard): Limited[] {
  return stowPlaces(card).filter((place): place is Limited => place.limitKg !== undefined);
}

/** Load minus limit for each limit, the margin on each plate counted: positive is over. Kilograms. */
export function overBy(
  card: VehicleCard,
  items: readonly LoadItem[],
  { spare }: Pick<LoadFigures, 'spare'>,
  marginKg: number,
): Row {
  return [
    marginKg - spare.grossKg,
    marginKg - spare.frontKg,
    marginKg - spare.rearKg,
    ...limitedPlaces(card).map((place) => massAt(items, place, card) - place.limitKg),
  ];
}

function mayBeLeft(item: LoadItem, left: CureWay['left']): boolean {
  const need = needOf(item);
  return need === 'may be left' || need === left;
}

/** Everything that can be done with one thing: moved to each other place, left behind where it may be. */
function remediesOf(card: VehicleCard, item: LoadItem, changeOf: ChangeOf, leavable: boolean): Remedy[] {
  const off = changeOf(-item.massKg, item.xM, (place) => isAt(item, place, card));
  const moves = stowPlaces(card)
    .filter((place) => !isAt(item, place, card) && Math.abs(place.xM - item.xM) > SAME_PLACE_M)
    .map((to): Remedy => {
      const on = changeOf(item.massKg, to.xM, (place) => place.name === to.name);
      return { kind: 'move', to, change: changed(off, on) };
    });
  return leavable ? [...moves, { kind: 'leave', change: off }] : moves;
}

/** Nearer than this a move changes nothing worth a word. Metres. */
const SAME_PLACE_M = 0.05;

type Drain = Omit<Drained, 'changePerL'> & { readonly xM: number };

/** Water in the card's tanks, and water listed anywhere else. */
function drainsOf(card: VehicleCard, items: readonly LoadItem[]): Drain[] {
  const tanks = (card.tanks ?? []).filter((tank) => DRAINABLE.has(tank.holds));
  const fromTanks = tanks.map((tank): Drain => {
    const litres = litresIn(card, items, tank);
    return {
      name: tank.name,
      xM: tank.xM,
      kgPerL: LIQUID_FACTS[tank.holds].kgPerL,
      litres,
      drain: (now, off) => setTank(card, now, tank, litres - off),
    };
  });
  const loose = items.flatMap((item): Drain[] => {
    const liquid = liquidOf(item);
    if (liquid === undefined || !DRAINABLE.has(liquid) || item.massKg <= 0) return [];
    if (tanks.some((tank) => isInTank(item, tank))) return [];
    const { kgPerL } = LIQUID_FACTS[liquid];
    return [
      {
        name: item.name,
        xM: item.xM,
        kgPerL,
        litres: item.massKg / kgPerL,
        drain: (now, off) => now.flatMap((each) => (each === item ? lessOf(item, off, kgPerL) : [each])),
      },
    ];
  });
  return [...fromTanks, ...loose]
    .filter(({ litres }) => litres > 0)
    .sort((a, b) => b.litres * b.kgPerL - a.litres * a.kgPerL)
    .slice(0, DRAINS_MOST);
}

/** Every choice of them is tried, so only the largest are taken. */
const DRAINS_MOST = 6;
const DRAINABLE: ReadonlySet<Liquid> = new Set(['fresh-water', 'waste-water', 'toilet']);

function lessOf(item: LoadItem, litres: number, kgPerL: number): LoadItem[] {
  const massKg = item.massKg - litres * kgPerL;
  if (massKg <= 1e-9) return [];
  const { litres: _, ...rest } = item;
  return [{ ...rest, massKg }];
}
