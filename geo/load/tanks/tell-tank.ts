import type { Tank, VehicleCard } from '../../vehicle/card.ts';
import { LIQUID_FACTS } from '../../vehicle/liquids.ts';
import type { LoadItem } from '../list/load-list.ts';
import { litresIn, setTank } from '../places/in-tank.ts';
import type { LoadLimit } from '../result.ts';
import { axleShare } from '../weigh/axle-loads.ts';
import { kgText, LIMIT_SAID, sayShare } from '../weigh/say-plates.ts';
import { weigh } from '../weigh/weigh.ts';
import { litresUntil } from './tank-steps.ts';

/** What there is to say about a tank as it stands. */
export interface TankTold {
  readonly litres: number;
  readonly kg: number;
  /** litres at which the first limit is reached, where that is below the brim */
  readonly limitL: number | undefined;
  /** until when, and what emptying or filling does: sentences */
  readonly says: readonly string[];
}

export function tellTank(card: VehicleCard, items: readonly LoadItem[], tank: Tank): TankTold {
  const { kgPerL } = LIQUID_FACTS[tank.holds];
  const litres = litresIn(card, items, tank);
  const until = litresUntil(card, items, tank);
  const says: string[] = [];
  let limitL: number | undefined;
  if (until.ok) {
    const plate = LIMIT_SAID[until.value.binds];
    if (until.value.fullFits) says.push('Full, it keeps every plate.');
    else if (until.value.litres < 0.5)
      says.push(
        `The ${plate} is ${isOverEmpty(card, items, tank, until.value.binds) ? 'over' : 'reached'} even with it empty.`,
      );
    else {
      limitL = until.value.litres;
      says.push(`At ${Math.floor(limitL + 1e-6)} l the ${plate} is reached.`);
    }
  }
  const wasted = tank.holds === 'waste-water' || tank.holds === 'toilet';
  if (wasted && litres > 0.5) says.push(`Emptying it: ${say(-litres)}.`);
  if (!wasted && litres < tank.capacityL - 0.5) says.push(`Filling it up: ${say(tank.capacityL - litres)}.`);
  return { litres, kg: litres * kgPerL, limitL, says };

  function say(byL: number): string {
    return sayShare(axleShare({ massKg: byL * kgPerL, xM: tank.xM }, card.wheelbaseM));
  }
}

function isOverEmpty(card: VehicleCard, items: readonly LoadItem[], tank: Tank, plate: LoadLimit): boolean {
  const empty = weigh(card, setTank(card, items, tank, 0));
  return !empty.ok || empty.value.over.includes(plate);
}

/** `100 l, 100 kg` */
export function tankText({ litres, kg }: Pick<TankTold, 'litres' | 'kg'>): string {
  return `${Math.round(litres)} l, ${kgText(kg)}`;
}
