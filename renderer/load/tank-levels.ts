import { axleShare } from '../../geo/load/axle-loads.ts';
import { LIQUID_FACTS, type Liquid } from '../../geo/load/liquids.ts';
import type { LoadItem } from '../../geo/load/load-list.ts';
import { isInTank, litresIn, litresUntil, setTank } from '../../geo/load/tanks.ts';
import type { Tank, VehicleCard } from '../../geo/vehicle/card.ts';
import { kgText, LIMIT_SAID, sayShare } from './words.ts';

/**
 * What of a tank the running order holds by definition, besides water: fuel to 90 % (Reg. 1230/2012 art. 2(4)), other
 * liquids full. Only what is beyond or below it is listed.
 */
const IN_RUNNING_ORDER: Readonly<Partial<Record<Liquid, number>>> = { fuel: 0.9, adblue: 1 };

function runningL({ holds, capacityL }: Tank): number {
  return (IN_RUNNING_ORDER[holds] ?? 0) * capacityL;
}

/** What a tank holds now, litres. */
export function levelOf(card: VehicleCard, items: readonly LoadItem[], tank: Tank): number {
  if (IN_RUNNING_ORDER[tank.holds] === undefined) return litresIn(card, items, tank);
  const kg = items.reduce((sum, item) => sum + (isInTank(item, tank) ? item.massKg : 0), 0);
  return Math.max(0, runningL(tank) + kg / LIQUID_FACTS[tank.holds].kgPerL);
}

/** The list with a tank filled to so many litres. */
export function fillTo(
  card: VehicleCard,
  items: readonly LoadItem[],
  tank: Tank,
  litres: number,
): LoadItem[] {
  const beyond = litres - runningL(tank);
  return setTank(card, items, tank, Math.abs(beyond) < 1e-9 ? 0 : beyond);
}

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
  const litres = levelOf(card, items, tank);
  const until = litresUntil(card, items, tank);
  const says: string[] = [];
  let limitL: number | undefined;
  if (until.ok) {
    const plate = LIMIT_SAID[until.value.binds];
    const at = runningL(tank) + until.value.litres;
    if (until.value.fullFits || at >= tank.capacityL - 1e-6) says.push('Full, it keeps every plate.');
    else if (until.value.litres < 0.5)
      says.push(`The ${plate} is over ${runningL(tank) > 0 ? 'without any more' : 'even with it empty'}.`);
    else {
      limitL = at;
      says.push(`At ${Math.floor(at + 1e-6)} l the ${plate} is reached.`);
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

/** `100 l, 100 kg` */
export function tankText({ litres, kg }: Pick<TankTold, 'litres' | 'kg'>): string {
  return `${Math.round(litres)} l, ${kgText(kg)}`;
}
