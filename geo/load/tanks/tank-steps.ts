import { ok, type Result } from '../../result.ts';
import type { Tank, VehicleCard } from '../../vehicle/card.ts';
import { LIQUID_FACTS } from '../../vehicle/liquids.ts';
import type { LoadItem } from '../list/load-list.ts';
import { setTank } from '../places/in-tank.ts';
import type { LoadLimit, LoadResult } from '../result.ts';
import { mostAt } from '../weigh/most-at.ts';
import { weigh } from '../weigh/weigh.ts';

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
