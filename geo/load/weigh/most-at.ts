import type { VehicleCard } from '../../vehicle/card.ts';
import { isOnRack } from '../places/stow-places.ts';
import { axleShare } from './axle-loads.ts';
import type { LoadFigures, LoadLimit } from './figures.ts';
import { FRONT_SHARE_LEAST } from './front-share.ts';

export interface MostAt {
  /** kilograms; 0 where something is over already */
  readonly massKg: number;
  /** what is reached with it */
  readonly binds: LoadLimit;
  /** from here on less than 40 % stand on the front axle, where that comes before a plate */
  readonly handbookKg?: number;
}

/**
 * The largest further mass at a place, from the least of: gross spare; each axle's spare by its share of the mass,
 * spare·L/x for the rear and spare·L/(L − x) for the front; the rack's spare behind the body. An axle that is relieved
 * there binds nothing.
 * @param xM metres rearwards from the front axle
 */
export function mostAt(card: VehicleCard, loaded: LoadFigures, xM: number): MostAt {
  const share = axleShare({ massKg: 1, xM }, card.wheelbaseM);
  const limits: readonly (readonly [LoadLimit, number, number])[] = [
    ['gross', loaded.spare.grossKg, 1],
    ['rear', loaded.spare.rearKg, share.rearKg],
    ['front', loaded.spare.frontKg, share.frontKg],
    ...(loaded.rack && isOnRack({ xM }, card) ? ([['rack', loaded.rack.spareKg, 1]] as const) : []),
  ];
  let massKg = Number.POSITIVE_INFINITY;
  let binds: LoadLimit = 'gross';
  for (const [limit, spareKg, each] of limits) {
    const most = spareKg < 0 ? 0 : each > 0 ? spareKg / each : Number.POSITIVE_INFINITY;
    if (most < massKg) [massKg, binds] = [most, limit];
  }
  const handbookKg = frontShareKg(loaded, share.frontKg);
  return { massKg, binds, ...(handbookKg !== undefined && handbookKg < massKg ? { handbookKg } : {}) };
}

/** The mass at which the front axle's share falls to 40 %: (F + m·f) / (G + m) = 0.4. */
function frontShareKg({ frontKg, grossKg }: LoadFigures, frontEach: number): number | undefined {
  if (frontEach >= FRONT_SHARE_LEAST) return undefined;
  return Math.max(0, (frontKg - FRONT_SHARE_LEAST * grossKg) / (FRONT_SHARE_LEAST - frontEach));
}
