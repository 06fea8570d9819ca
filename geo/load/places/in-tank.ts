import type { Tank, VehicleCard } from '../../vehicle/card.ts';
import { EMPTY_WEIGHT_SHARE, LIQUID_FACTS } from '../../vehicle/liquids.ts';
import { kindOf } from '../list/item-kind.ts';
import type { LoadItem } from '../list/load-list.ts';

/** Without a name, a liquid this near a tank that holds such is in it. Metres. */
const NEAR_M = 0.3;
/** Litres below this are noise of binary fractions. */
const NOISE_L = 1e-9;

/** Whether an item is what stands in that tank. */
export function isInTank(item: LoadItem, tank: Tank): boolean {
  if (kindOf(item) !== tank.holds) return false;
  return item.place === undefined ? Math.abs(item.xM - tank.xM) <= NEAR_M : item.place === tank.name;
}

/** What a tank holds, litres: as listed, and what the empty weight has of it. Never below nothing. */
export function litresIn(card: VehicleCard, items: readonly LoadItem[], tank: Tank): number {
  const kg = items.reduce((sum, item) => sum + (isInTank(item, tank) ? item.massKg : 0), 0);
  return Math.max(0, kg / LIQUID_FACTS[tank.holds].kgPerL + emptyWeightLitres(card, tank));
}

/** The list with so many litres in a tank: one item for it, negative where the empty weight holds more. */
export function setTank(
  card: VehicleCard,
  items: readonly LoadItem[],
  tank: Tank,
  litres: number,
): LoadItem[] {
  const rest = items.filter((item) => !isInTank(item, tank));
  const beyond = litres - emptyWeightLitres(card, tank);
  if (Math.abs(beyond) < NOISE_L) return rest;
  const massKg = beyond * LIQUID_FACTS[tank.holds].kgPerL;
  const { name, holds, xM } = tank;
  const at = items.findIndex((item) => isInTank(item, tank));
  const item = { name, kind: holds, place: name, massKg, xM, ...(beyond > 0 ? { litres: beyond } : {}) };
  return rest.toSpliced(at < 0 ? rest.length : Math.min(at, rest.length), 0, item);
}

/** What the empty weight holds of a tank, litres. */
export function emptyWeightLitres({ runningOrder, tanks }: VehicleCard, tank: Tank): number {
  const litres = tank.capacityL * (EMPTY_WEIGHT_SHARE[tank.holds] ?? 0);
  if (tank.holds !== 'fresh-water') return litres;
  if (!runningOrder?.includesFreshWater) return 0;
  // of several tanks nobody says which was full: the first is taken
  const first = tanks?.find(({ holds }) => holds === 'fresh-water');
  return first === undefined || first.name === tank.name ? litres : 0;
}
