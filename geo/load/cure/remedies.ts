import type { VehicleCard } from '../../vehicle/card.ts';
import { LIQUID_FACTS } from '../../vehicle/liquids.ts';
import { kindOf, liquidOf } from '../list/item-kind.ts';
import type { LoadItem } from '../list/load-list.ts';
import { isInTank, litresIn, setTank } from '../places/in-tank.ts';
import { isAt, type StowPlace, stowPlaces } from '../places/stow-places.ts';
import type { LoadResult } from '../result.ts';
import { axleShare } from '../weigh/axle-loads.ts';

/** Everything that must not be exceeded, as one row of figures: gross, front, rear, then each place with a limit. */
export type Row = readonly number[];

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

/** What of a load may be moved, left behind or drained. People, fuel, gas and what is taken off stay as they are. */
export function remediesFor(card: VehicleCard, items: readonly LoadItem[], loaded: LoadResult): Remedies {
  const places = stowPlaces(card);
  const limited = places.filter((place) => place.limitKg !== undefined);
  const change = (massKg: number, xM: number, place: (each: StowPlace) => boolean): number[] => {
    const { frontKg, rearKg } = axleShare({ massKg, xM }, card.wheelbaseM);
    return [massKg, frontKg, rearKg, ...limited.map((each) => (place(each) ? massKg : 0))];
  };
  const { spare } = loaded;
  const inside = (place: StowPlace) =>
    items.reduce((sum, item) => sum + (isAt(item, place, card) ? item.massKg : 0), 0);
  return {
    over: [
      -spare.grossKg,
      -spare.frontKg,
      -spare.rearKg,
      ...limited.map((place) => inside(place) - (place.limitKg ?? 0)),
    ],
    handled: items
      .filter((item) => item.massKg > 0 && kindOf(item) === 'thing')
      .map((item) => {
        const off = change(-item.massKg, item.xM, (place) => isAt(item, place, card));
        const moves = places
          .filter((place) => !isAt(item, place, card) && Math.abs(place.xM - item.xM) > SAME_PLACE_M)
          .map((to): Remedy => {
            const on = change(item.massKg, to.xM, (place) => place.name === to.name);
            return { kind: 'move', to, change: off.map((kg, limit) => kg + (on[limit] ?? 0)) };
          });
        return { item, remedies: [...moves, { kind: 'leave', change: off }] };
      }),
    drained: drainsOf(card, items).map(({ xM, ...each }) => ({
      ...each,
      changePerL: change(-each.kgPerL, xM, () => false),
    })),
  };
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
const DRAINABLE: ReadonlySet<string> = new Set(['fresh-water', 'waste-water', 'toilet']);

function lessOf(item: LoadItem, litres: number, kgPerL: number): LoadItem[] {
  const massKg = item.massKg - litres * kgPerL;
  if (massKg <= 1e-9) return [];
  const { litres: _, ...rest } = item;
  return [{ ...rest, massKg }];
}
