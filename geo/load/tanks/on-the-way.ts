import type { Tank, VehicleCard } from '../../vehicle/card.ts';
import { isWaste } from '../../vehicle/liquids.ts';
import type { LoadItem } from '../list/load-list.ts';
import { litresIn } from '../places/in-tank.ts';
import type { LoadFigures } from '../weigh/figures.ts';
import { type TankStep, tankSteps } from './tank-steps.ts';
import { GAUGE_L } from './tell-tank.ts';

/** What happened to the tanks: water used, waste and toilet emptied, fresh water filled up. */
export type MomentKind = 'used' | 'used into the waste tank' | 'emptied' | 'filled up';

/** A state of the tanks that a hire comes through. */
export interface Moment {
  readonly kind: MomentKind;
  readonly result: LoadFigures;
}

/** Comes about by itself, as water is used; the others are somebody's doing. */
export const BY_ITSELF: Readonly<Record<MomentKind, boolean>> = {
  used: true,
  'used into the waste tank': true,
  emptied: false,
  'filled up': false,
};

/**
 * What the tanks do to the axles on the way, in their order: the fresh water used (in the waste tanks as far as they
 * hold it), waste and toilet emptied, fresh water filled up. Between two of them each axle's load runs straight, so
 * these are the worst. States that change nothing are left out; none for a card without tanks.
 */
export function onTheWay(card: VehicleCard, items: readonly LoadItem[]): readonly Moment[] {
  const moments: Moment[] = [];
  let now = items;
  for (const { kind, steps } of plannedOf(card, items)) {
    const felt = steps.filter(({ tank, toL }) => Math.abs(litresIn(card, now, tank) - toL) > GAUGE_L);
    const taken = tankSteps(card, now, felt);
    const last = taken.ok ? taken.value.at(-1) : undefined;
    if (!last) continue;
    now = last.items;
    moments.push({ kind, result: last.result });
  }
  return moments;
}

/** What is done to which tanks at each moment, from the load as it starts. */
function plannedOf(
  card: VehicleCard,
  items: readonly LoadItem[],
): readonly { readonly kind: MomentKind; readonly steps: readonly TankStep[] }[] {
  const tanks = card.tanks ?? [];
  const fresh = tanks.filter(({ holds }) => holds === 'fresh-water');
  const waste = tanks.filter(({ holds }) => holds === 'waste-water');
  const usedL = fresh.reduce((sum, tank) => sum + litresIn(card, items, tank), 0);
  const used = [...fresh.map(emptied), ...filledBy(card, items, waste, usedL)];
  return [
    {
      kind: waste.length > 0 ? 'used into the waste tank' : 'used',
      steps: usedL > GAUGE_L ? used : [],
    },
    { kind: 'emptied', steps: tanks.filter(({ holds }) => isWaste(holds)).map(emptied) },
    { kind: 'filled up', steps: fresh.map((tank) => ({ tank, toL: tank.capacityL })) },
  ];
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
