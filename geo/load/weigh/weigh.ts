import { given } from '../../given.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { loadNotes, loadWarnings } from '../doubts/doubts.ts';
import type { LoadItem } from '../list/load-list.ts';
import { isOnRack, rackPlace } from '../places/stow-places.ts';
import type { LoadLimit, LoadResult } from '../result.ts';
import { axleLoads, centreOfMassM } from './axle-loads.ts';

/** Differences below this are noise of binary fractions. Kilograms. */
const NOISE_KG = 1e-6;

type Running = NonNullable<VehicleCard['runningOrder']>;

/**
 * The vehicle with these items on board, axle by axle against its plates: running order plus moments about the axles.
 * @returns the figures with every doubt in words; a problem when the card has no running order, or the list takes off
 * more than there is
 */
export function weigh(card: VehicleCard, items: readonly LoadItem[]): Result<LoadResult> {
  const running = card.runningOrder;
  if (running === undefined)
    return fail(
      'no-running-order',
      `The card of ${card.name.slice(0, 80)} has no running order: weigh the vehicle axle by axle, empty and ready to drive, and write both figures on its card ("runningOrder" in the file).`,
    );
  const result = weighFrom(card, running, items);
  const { frontKg, rearKg, grossKg, over } = result;
  if (!(grossKg > 0) || (Math.min(frontKg, rearKg) < -NOISE_KG && over.length === 0))
    return fail(
      'load-impossible',
      `As listed the front axle would carry ${Math.round(frontKg)} kg and the rear ${Math.round(rearKg)} kg, which cannot be: check the masses and places of what is taken off.`,
    );
  return ok(result);
}

function weighFrom(card: VehicleCard, running: Running, items: readonly LoadItem[]): LoadResult {
  const { frontKg, rearKg } = axleLoads(running, items, card.wheelbaseM);
  const grossKg = frontKg + rearKg;
  const plates = { frontKg: card.axleKg.front, rearKg: card.axleKg.rear, grossKg: card.grossKg };
  const spare = {
    frontKg: plates.frontKg - frontKg,
    rearKg: plates.rearKg - rearKg,
    grossKg: plates.grossKg - grossKg,
  };
  const rack = rackOf(card, items);
  const runningKg = running.frontKg + running.rearKg;
  const figures = {
    frontKg,
    rearKg,
    grossKg,
    spare,
    frontShare: frontKg / grossKg,
    plates,
    runningOrder: { frontKg: running.frontKg, rearKg: running.rearKg, grossKg: runningKg },
    payloadKg: plates.grossKg - runningKg,
    payloadLeftKg: spare.grossKg,
    bindsFirst: bindsFirst(spare),
    over: overOf(spare, rack),
    centreM: centreOfMassM({ frontKg, rearKg }, card.wheelbaseM),
    ...given({ rack }),
  };
  return {
    ...figures,
    warnings: loadWarnings(card, running, items, figures),
    notes: loadNotes(running, items),
  };
}

function rackOf(card: VehicleCard, items: readonly LoadItem[]): LoadResult['rack'] {
  const place = rackPlace(card);
  if (place === undefined) return undefined;
  const onKg = items.reduce((sum, item) => sum + (isOnRack(item, card) ? item.massKg : 0), 0);
  const { limitKg } = place;
  const limitFrom = card.rack?.limitKg === undefined ? 'common practice' : 'card';
  return { onKg, limitKg, spareKg: limitKg - onKg, limitFrom };
}

function bindsFirst({ frontKg, rearKg, grossKg }: LoadResult['spare']): LoadResult['bindsFirst'] {
  const least = Math.min(frontKg, rearKg, grossKg);
  return grossKg === least ? 'gross' : rearKg === least ? 'rear' : 'front';
}

function overOf(spare: LoadResult['spare'], rack: LoadResult['rack']): LoadLimit[] {
  const over: LoadLimit[] = [];
  if (spare.grossKg < -NOISE_KG) over.push('gross');
  if (spare.frontKg < -NOISE_KG) over.push('front');
  if (spare.rearKg < -NOISE_KG) over.push('rear');
  if (rack?.limitFrom === 'card' && rack.spareKg < -NOISE_KG) over.push('rack');
  return over;
}
