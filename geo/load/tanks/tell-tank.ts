import type { Tank, VehicleCard } from '../../vehicle/card.ts';
import { isWaste, LIQUID_FACTS } from '../../vehicle/liquids.ts';
import type { LoadItem } from '../list/load-list.ts';
import { litresIn } from '../places/in-tank.ts';
import { type AxleLoads, axleShare } from '../weigh/axle-loads.ts';
import type { LoadLimit } from '../weigh/figures.ts';
import { litresUntil } from './litres-until.ts';

/** Less than this no gauge shows. Litres. */
export const GAUGE_L = 0.5;

/** What becomes of the limits as a tank fills. */
export type TankReach =
  | { readonly kind: 'full keeps all' }
  | { readonly kind: 'over even empty' | 'reached even empty'; readonly limit: LoadLimit }
  | { readonly kind: 'reached at'; readonly limit: LoadLimit; readonly litres: number };

/** A tank as it stands. */
export interface TankTold {
  readonly litres: number;
  readonly kg: number;
  /** undefined where the load cannot be worked out with it empty */
  readonly reach: TankReach | undefined;
  /** what emptying does to the axles where it holds waste, filling it up where it does not; none where that is done */
  readonly todo: { readonly kind: 'empty' | 'fill'; readonly share: AxleLoads } | undefined;
}

export function tellTank(card: VehicleCard, items: readonly LoadItem[], tank: Tank): TankTold {
  const { kgPerL } = LIQUID_FACTS[tank.holds];
  const litres = litresIn(card, items, tank);
  const share = (byL: number) => axleShare({ massKg: byL * kgPerL, xM: tank.xM }, card.wheelbaseM);
  const told = { litres, kg: litres * kgPerL, reach: reachOf(card, items, tank) };
  if (isWaste(tank.holds))
    return { ...told, todo: litres > GAUGE_L ? { kind: 'empty', share: share(-litres) } : undefined };
  const roomL = tank.capacityL - litres;
  return { ...told, todo: roomL > GAUGE_L ? { kind: 'fill', share: share(roomL) } : undefined };
}

function reachOf(card: VehicleCard, items: readonly LoadItem[], tank: Tank): TankReach | undefined {
  const until = litresUntil(card, items, tank);
  if (!until.ok) return undefined;
  const { fullFits, litres, binds: limit, overEmpty } = until.value;
  if (fullFits) return { kind: 'full keeps all' };
  if (litres < GAUGE_L) return { kind: overEmpty ? 'over even empty' : 'reached even empty', limit };
  return { kind: 'reached at', limit, litres };
}
