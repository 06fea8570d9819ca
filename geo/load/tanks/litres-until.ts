import { ok, type Result } from '../../result.ts';
import type { Tank, VehicleCard } from '../../vehicle/card.ts';
import { LIQUID_FACTS } from '../../vehicle/liquids.ts';
import type { LoadItem } from '../list/load-list.ts';
import { setTank } from '../places/in-tank.ts';
import type { LoadLimit } from '../weigh/figures.ts';
import { mostAt } from '../weigh/most-at.ts';
import { weigh } from '../weigh/weigh.ts';

interface TankLimit {
  /** litres in the tank at which the first limit is reached, whatever the tank holds */
  readonly litres: number;
  readonly binds: LoadLimit;
  /** whether a full tank keeps every limit */
  readonly fullFits: boolean;
  /** whether that limit is exceeded with the tank empty */
  readonly overEmpty: boolean;
}

/** How many litres a tank may hold, everything else as listed, until a limit is reached, and which. */
export function litresUntil(card: VehicleCard, items: readonly LoadItem[], tank: Tank): Result<TankLimit> {
  const empty = weigh(card, setTank(card, items, tank, 0));
  if (!empty.ok) return empty;
  const { massKg, binds } = mostAt(card, empty.value, tank.xM);
  const litres = massKg / LIQUID_FACTS[tank.holds].kgPerL;
  return ok({
    litres,
    binds,
    fullFits: litres >= tank.capacityL - 1e-6,
    overEmpty: empty.value.over.includes(binds),
  });
}
