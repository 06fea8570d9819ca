import { ok, type Result } from '../result.ts';
import type { Tank, VehicleCard } from '../vehicle/card.ts';
import { kindOf } from './item-kind.ts';
import { LIQUID_FACTS } from './liquids.ts';
import type { LoadItem } from './load-list.ts';
import { mostAt } from './most-at.ts';
import type { LoadLimit, LoadResult } from './result.ts';
import { weigh } from './weigh.ts';

/** Without a name, a liquid this near a tank that holds such is in it. Metres. */
const NEAR_M = 0.3;
/**
 * A running order with fresh water holds 90 % of the tank by the older convention. Taking less off than may be in it
 * keeps the answer on the safe side.
 */
const RUNNING_SHARE = 0.9;

/** Whether an item is what stands in that tank. */
export function isInTank(item: LoadItem, tank: Tank): boolean {
  if (kindOf(item) !== tank.holds) return false;
  return item.place === undefined ? Math.abs(item.xM - tank.xM) <= NEAR_M : item.place === tank.name;
}

/** What a tank holds, litres: as listed, and what the running order has of it. Never below nothing. */
export function litresIn(card: VehicleCard, items: readonly LoadItem[], tank: Tank): number {
  const kg = items.reduce((sum, item) => sum + (isInTank(item, tank) ? item.massKg : 0), 0);
  return Math.max(0, kg / LIQUID_FACTS[tank.holds].kgPerL + runningLitres(card, tank));
}

/** The list with so many litres in a tank: one item for it, negative where the running order holds more. */
export function setTank(
  card: VehicleCard,
  items: readonly LoadItem[],
  tank: Tank,
  litres: number,
): LoadItem[] {
  const rest = items.filter((item) => !isInTank(item, tank));
  const beyond = litres - runningLitres(card, tank);
  if (beyond === 0) return rest;
  const massKg = beyond * LIQUID_FACTS[tank.holds].kgPerL;
  const { name, holds, xM } = tank;
  const at = items.findIndex((item) => isInTank(item, tank));
  const item = { name, kind: holds, place: name, massKg, xM, ...(beyond > 0 ? { litres: beyond } : {}) };
  return rest.toSpliced(at < 0 ? rest.length : Math.min(at, rest.length), 0, item);
}

function runningLitres({ runningOrder, tanks }: VehicleCard, tank: Tank): number {
  if (tank.holds !== 'fresh-water' || !runningOrder?.includesFreshWater) return 0;
  // of several tanks nobody says which was full: the first is taken
  const first = tanks?.find(({ holds }) => holds === 'fresh-water');
  return first === undefined || first.name === tank.name ? tank.capacityL * RUNNING_SHARE : 0;
}

export interface TankLimit {
  /** litres in the tank at which the first limit is reached, whatever the tank holds */
  readonly litres: number;
  readonly binds: LoadLimit;
  /** whether a full tank keeps every limit */
  readonly fullFits: boolean;
}

/** How many litres a tank may hold, everything else as listed, until a limit is reached, and which. */
export function litresUntil(card: VehicleCard, items: readonly LoadItem[], tank: Tank): Result<TankLimit> {
  const empty = weigh(card, setTank(card, items, tank, 0));
  if (!empty.ok) return empty;
  const { massKg, binds } = mostAt(card, empty.value, tank.xM);
  const litres = massKg / LIQUID_FACTS[tank.holds].kgPerL;
  return ok({ litres, binds, fullFits: litres >= tank.capacityL - 1e-6 });
}

/** A tank filled or dumped to so many litres. */
export interface TankStep {
  readonly tank: Tank;
  readonly toL: number;
}

export interface StepTaken {
  readonly step: TankStep;
  readonly items: readonly LoadItem[];
  readonly result: LoadResult;
  /** what the step puts on each axle; negative: takes off */
  readonly change: { readonly frontKg: number; readonly rearKg: number; readonly grossKg: number };
}

/** What filling and dumping on the way does, step by step: the load after each, and what changed on each axle. */
export function tankSteps(
  card: VehicleCard,
  items: readonly LoadItem[],
  steps: readonly TankStep[],
): Result<StepTaken[]> {
  const start = weigh(card, items);
  if (!start.ok) return start;
  const taken: StepTaken[] = [];
  let before = start.value;
  let now = items;
  for (const step of steps) {
    now = setTank(card, now, step.tank, step.toL);
    const after = weigh(card, now);
    if (!after.ok) return after;
    const change = {
      frontKg: after.value.frontKg - before.frontKg,
      rearKg: after.value.rearKg - before.rearKg,
      grossKg: after.value.grossKg - before.grossKg,
    };
    taken.push({ step, items: now, result: after.value, change });
    before = after.value;
  }
  return ok(taken);
}
