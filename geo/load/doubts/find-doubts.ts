import type { VehicleCard } from '../../vehicle/card.ts';
import { kindOf } from '../list/item-kind.ts';
import type { LoadItem } from '../list/load-list.ts';
import { isInTank } from '../places/in-tank.ts';
import type { LoadFigures } from '../weigh/figures.ts';
import { FRONT_SHARE_LEAST, FRONT_SHARE_MOST } from '../weigh/front-share.ts';
import { NOISE_KG } from '../weigh/noise.ts';
import { plateSums } from '../weigh/sums.ts';
import type { EmptyWeight } from '../weigh/weigh.ts';
import type { Doubt } from './doubt.ts';
import { placeDoubts } from './place-doubts.ts';

/** What a litre may weigh, from LPG to AdBlue with some room. */
const KG_PER_LITRE = { least: 0.45, most: 1.3 };

/** What is over or doubtful in a load as it stands, the gravest first. */
export function findDoubts(
  card: VehicleCard,
  empty: EmptyWeight,
  items: readonly LoadItem[],
  figures: LoadFigures,
): Doubt[] {
  return [
    ...overDoubts(figures),
    ...driverDoubts(empty, items),
    ...liquidDoubts(card, empty, items),
    ...shareDoubts(figures),
    ...placeDoubts(card, items),
  ];
}

/** What a load is over: its plates, the rack, wheels that would lift. */
export function overDoubts(figures: LoadFigures): Doubt[] {
  const { frontKg, rearKg, rack } = figures;
  const sums = plateSums(figures);
  const found: Doubt[] = [];
  for (const limit of ['gross', 'front', 'rear'] as const) {
    const { over, loadKg, plateKg, spareKg } = sums[limit];
    if (over) found.push({ kind: 'over plate', limit, loadKg, plateKg, overKg: -spareKg });
  }
  if (rack !== undefined && rack.spareKg < -NOISE_KG)
    found.push({ kind: 'over rack', onKg: rack.onKg, overKg: -rack.spareKg, limitFrom: rack.limitFrom });
  if (frontKg < 0) found.push({ kind: 'wheels lift', axle: 'front' });
  if (rearKg < 0) found.push({ kind: 'wheels lift', axle: 'rear' });
  return found;
}

function driverDoubts(empty: EmptyWeight, items: readonly LoadItem[]): Doubt[] {
  const driver = items.find((item) => kindOf(item) === 'driver' && item.massKg > 0);
  if (empty.includesDriver) return driver === undefined ? [] : [{ kind: 'driver twice', item: driver.name }];
  return driver === undefined ? [{ kind: 'no driver' }] : [];
}

function liquidDoubts(card: VehicleCard, empty: EmptyWeight, items: readonly LoadItem[]): Doubt[] {
  const found: Doubt[] = [];
  const water = items.find((item) => kindOf(item) === 'fresh-water' && item.massKg > 0);
  if (empty.includesFreshWater && water) found.push({ kind: 'water twice', item: water.name });
  // of what is listed in a tank of the card it is known whether it goes in
  const fuel = items.find(
    (item) => kindOf(item) === 'fuel' && item.massKg > 0 && !card.tanks?.some((tank) => isInTank(item, tank)),
  );
  if (fuel) found.push({ kind: 'fuel twice', item: fuel.name });
  for (const { name, litres, massKg } of items) {
    if (!litres || massKg === 0) continue;
    const each = Math.abs(massKg) / litres;
    if (each < KG_PER_LITRE.least || each > KG_PER_LITRE.most)
      found.push({ kind: 'litres and mass', item: name, litres, massKg });
  }
  return found;
}

function shareDoubts({ frontShare: share }: LoadFigures): Doubt[] {
  if (share < FRONT_SHARE_LEAST) return [{ kind: 'little in front', share }];
  return share > FRONT_SHARE_MOST ? [{ kind: 'much in front', share }] : [];
}
