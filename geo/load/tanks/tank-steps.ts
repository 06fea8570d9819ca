import { ok, type Result } from '../../result.ts';
import type { Tank, VehicleCard } from '../../vehicle/card.ts';
import type { LoadItem } from '../list/load-list.ts';
import { setTank } from '../places/in-tank.ts';
import type { LoadFigures } from '../weigh/figures.ts';
import { weigh } from '../weigh/weigh.ts';

/** A tank filled or emptied to so many litres. */
export interface TankStep {
  readonly tank: Tank;
  readonly toL: number;
}

interface StepTaken {
  readonly step: TankStep;
  readonly items: readonly LoadItem[];
  readonly result: LoadFigures;
  /** what the step puts on each axle; negative: takes off */
  readonly change: { readonly frontKg: number; readonly rearKg: number; readonly grossKg: number };
}

/** What filling and emptying on the way does, step by step: the load after each, and what changed on each axle. */
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
