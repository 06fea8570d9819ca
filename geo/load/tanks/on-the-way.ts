import type { Tank, VehicleCard } from '../../vehicle/card.ts';
import { isWaste } from '../../vehicle/liquids.ts';
import type { LoadItem } from '../list/load-list.ts';
import { litresIn } from '../places/in-tank.ts';
import type { LoadFigures } from '../weigh/figures.ts';
import { decidingOf } from '../weigh/sums.ts';
import { weigh } from '../weigh/weigh.ts';
import { type TankStep, tankSteps } from './tank-steps.ts';
import { GAUGE_L } from './tell-tank.ts';

/** What happened to the tanks: water used, waste and toilet emptied, fresh water filled up. */
export type MomentKind = 'used' | 'used into the waste tank' | 'emptied' | 'filled up';

/** A state of the tanks that a hire comes through. */
export interface Moment {
  readonly kind: MomentKind;
  readonly result: LoadFigures;
  /** the list as it then is */
  readonly items: readonly LoadItem[];
}

/** Comes about by itself, as water is used; the others are somebody's doing. */
export const BY_ITSELF: Readonly<Record<MomentKind, boolean>> = {
  used: true,
  'used into the waste tank': true,
  emptied: false,
  'filled up': false,
};

/** Something that is done with the tanks at a stop, or on the way to it. */
export type StopKind = 'use water' | 'empty waste' | 'fill water';
export const STOP_KINDS: readonly StopKind[] = ['use water', 'empty waste', 'fill water'];

/** After a stop: what each tank of water, waste and the toilet holds, and the vehicle as it then is. */
export interface Stop {
  readonly kind: StopKind;
  /** a stop where nothing is felt changes nothing */
  readonly moved: boolean;
  readonly levels: readonly { readonly tank: Tank; readonly litres: number }[];
  readonly result: LoadFigures;
  readonly items: readonly LoadItem[];
}

/**
 * What the tanks do to the axles over the stops of a day, one after the other. Water used runs into the waste tanks as
 * far as they hold it; waste and toilet are emptied; fresh water is filled up. Between two stops each axle's load runs
 * straight, so the stops are the worst.
 */
export function overStops(
  card: VehicleCard,
  items: readonly LoadItem[],
  stops: readonly StopKind[],
): readonly Stop[] {
  const start = weigh(card, items);
  if (!start.ok) return [];
  const told: Stop[] = [];
  let now = items;
  let result = start.value;
  for (const kind of stops) {
    const before = now;
    const felt = stepsOf(card, before, kind).filter(
      ({ tank, toL }) => Math.abs(litresIn(card, before, tank) - toL) > GAUGE_L,
    );
    const taken = tankSteps(card, before, felt);
    if (!taken.ok) return told;
    const last = taken.value.at(-1);
    if (last) {
      now = last.items;
      result = last.result;
    }
    const after = now;
    const levels = levelsOf(card, after);
    told.push({ kind, moved: last !== undefined, levels, result, items: after });
  }
  return told;
}

/** What the tanks hold that change over a day: water, waste and the toilet. */
export function levelsOf(card: VehicleCard, items: readonly LoadItem[]): Stop['levels'] {
  return (card.tanks ?? [])
    .filter(({ holds }) => holds === 'fresh-water' || isWaste(holds))
    .map((tank) => ({ tank, litres: litresIn(card, items, tank) }));
}

/**
 * The states a hire comes through by the usual course: the fresh water used, waste and toilet emptied, fresh water
 * filled up. States that change nothing are left out; none for a card without tanks.
 */
export function onTheWay(card: VehicleCard, items: readonly LoadItem[]): readonly Moment[] {
  const hasWaste = card.tanks?.some(({ holds }) => holds === 'waste-water') === true;
  const called: Readonly<Record<StopKind, MomentKind>> = {
    'use water': hasWaste ? 'used into the waste tank' : 'used',
    'empty waste': 'emptied',
    'fill water': 'filled up',
  };
  return overStops(card, items, STOP_KINDS)
    .filter(({ moved }) => moved)
    .map(({ kind, result, items: then }) => ({ kind: called[kind], result, items: then }));
}

/** The moment that is farthest over a plate; undefined where none is over. */
export function worstOnTheWay(moments: readonly Moment[]): Moment | undefined {
  return moments
    .filter(({ result }) => result.over.length > 0)
    .reduce<Moment | undefined>(
      (worst, each) =>
        worst && decidingOf(worst.result).spareKg <= decidingOf(each.result).spareKg ? worst : each,
      undefined,
    );
}

function stepsOf(card: VehicleCard, items: readonly LoadItem[], kind: StopKind): readonly TankStep[] {
  const tanks = card.tanks ?? [];
  const fresh = tanks.filter(({ holds }) => holds === 'fresh-water');
  switch (kind) {
    case 'use water': {
      const usedL = fresh.reduce((sum, tank) => sum + litresIn(card, items, tank), 0);
      const waste = tanks.filter(({ holds }) => holds === 'waste-water');
      return usedL > GAUGE_L ? [...fresh.map(emptied), ...filledBy(card, items, waste, usedL)] : [];
    }
    case 'empty waste':
      return tanks.filter(({ holds }) => isWaste(holds)).map(emptied);
    case 'fill water':
      return fresh.map((tank) => ({ tank, toL: tank.capacityL }));
  }
}

function emptied(tank: Tank): TankStep {
  return { tank, toL: 0 };
}

/** The levels of some tanks when so many litres run into them, one after the other to the brim. */
function filledBy(
  card: VehicleCard,
  items: readonly LoadItem[],
  tanks: readonly Tank[],
  litres: number,
): TankStep[] {
  let left = litres;
  return tanks.map((tank) => {
    const holdsL = litresIn(card, items, tank);
    const takenL = Math.min(left, Math.max(0, tank.capacityL - holdsL));
    left -= takenL;
    return { tank, toL: holdsL + takenL };
  });
}
