import { printKg } from '../../units/print.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { kindOf } from '../list/item-kind.ts';
import type { LoadItem } from '../list/load-list.ts';
import { isInTank } from '../places/in-tank.ts';
import type { LoadResult } from '../result.ts';
import { placeWarnings, quote } from './place-doubts.ts';

/** Of the gross mass on the front axle: the rule of a British builder's handbook (2008), for steering, grip and brakes. */
export const FRONT_SHARE_LEAST = 0.4;
export const FRONT_SHARE_MOST = 0.7;

/** What a litre may weigh, from LPG to AdBlue with some room. */
const KG_PER_LITRE = [0.45, 1.3] as const;

type Running = NonNullable<VehicleCard['runningOrder']>;
type Figures = Omit<LoadResult, 'warnings' | 'notes'>;

/** What is over or doubtful in a load, the gravest first. */
export function loadWarnings(
  card: VehicleCard,
  running: Running,
  items: readonly LoadItem[],
  figures: Figures,
): string[] {
  return [
    ...overWarnings(figures),
    ...countWarnings(card, running, items),
    ...shareWarnings(figures),
    ...placeWarnings(card, items),
  ];
}

/** What was counted, and what was not. */
export function loadNotes(running: Running, items: readonly LoadItem[]): string[] {
  const water = items.some((item) => kindOf(item) === 'fresh-water');
  return [
    `The running order is counted with${running.includesDriver ? '' : 'out'} the driver (75 kg by convention) and with${running.includesFreshWater ? '' : 'out'} fresh water; fuel as when it was weighed, by convention 90 %.`,
    ...(!running.includesFreshWater && !water ? ['No fresh water is listed: the tank counts as empty.'] : []),
    ...(items.some((item) => item.massKg < 0) ? ['A negative mass is taken off the running order.'] : []),
  ];
}

const NAMES = { front: 'front axle', rear: 'rear axle', gross: 'vehicle' } as const;

function overWarnings({ spare, plates, frontKg, rearKg, grossKg, rack }: Figures): string[] {
  const rows = [
    ['gross', grossKg, plates.grossKg, spare.grossKg],
    ['front', frontKg, plates.frontKg, spare.frontKg],
    ['rear', rearKg, plates.rearKg, spare.rearKg],
  ] as const;
  const said = rows
    .filter(([, , , spareKg]) => spareKg < -1e-6)
    .map(
      ([which, actualKg, plateKg, spareKg]) =>
        `The ${NAMES[which]} is over its plate by ${printKg(-spareKg, 'up')}: ${printKg(actualKg, 'up')} on ${printKg(plateKg)}.`,
    );
  if (rack !== undefined && rack.spareKg < -1e-6)
    said.push(
      `The rack carries ${printKg(rack.onKg, 'up')}, ${printKg(-rack.spareKg, 'up')} more than ${rack.limitFrom === 'card' ? 'its limit' : 'the 60 kg that are common practice; the card gives no limit of its own'}.`,
    );
  if (frontKg < 0)
    said.push('As listed the front wheels would lift off the ground. Check masses and places.');
  if (rearKg < 0) said.push('As listed the rear wheels would lift off the ground. Check masses and places.');
  return said;
}

function countWarnings(card: VehicleCard, running: Running, items: readonly LoadItem[]): string[] {
  const said: string[] = [];
  const drivers = items.filter((item) => kindOf(item) === 'driver' && item.massKg > 0);
  const water = items.find((item) => kindOf(item) === 'fresh-water' && item.massKg > 0);
  if (running.includesDriver && drivers[0])
    said.push(
      `${quote(drivers[0])} is listed, and the running order holds a driver already: counted twice unless the figure is only what the driver weighs beyond 75 kg.`,
    );
  if (!running.includesDriver && drivers.length === 0)
    said.push('The running order is without the driver and none is listed: add the driver, 75 kg or more.');
  if (running.includesFreshWater && water)
    said.push(
      `${quote(water)} is listed, and the running order holds fresh water already: counted twice. Take it out, or list as a negative mass what is drained.`,
    );
  // of what is listed in a tank of the card it is known whether it goes in
  const fuel = items.find(
    (item) => kindOf(item) === 'fuel' && item.massKg > 0 && !card.tanks?.some((tank) => isInTank(item, tank)),
  );
  if (fuel)
    said.push(
      `${quote(fuel)} is listed, and a running order holds 90 % of the fuel: count only what is beyond it.`,
    );
  for (const item of items) {
    if (!item.litres || item.massKg === 0) continue;
    const each = Math.abs(item.massKg) / item.litres;
    if (each < KG_PER_LITRE[0] || each > KG_PER_LITRE[1])
      said.push(
        `${quote(item)}: ${item.litres} l and ${printKg(item.massKg)} do not go together; the mass is counted.`,
      );
  }
  return said;
}

function shareWarnings({ frontShare }: Figures): string[] {
  const share = `${(frontShare * 100).toFixed(0)} % of the mass stands on the front axle`;
  const rule = 'one British builder’s handbook (2008) asks for 40 to 70 %';
  if (frontShare < FRONT_SHARE_LEAST)
    return [`Only ${share}; ${rule}. Steering and grip suffer: load further forward.`];
  if (frontShare > FRONT_SHARE_MOST) return [`${share}; ${rule}. Load further back.`];
  return [];
}
