import { given } from '../../given.ts';
import { fail, ok, type Result } from '../../result.ts';
import { clip } from '../../units/text.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import type { LoadItem } from '../list/load-list.ts';
import { massAt, rackPlace } from '../places/stow-places.ts';
import { axleLoads, centreOfMassM } from './axle-loads.ts';
import type { LoadFigures, LoadLimit } from './figures.ts';
import { NOISE_KG } from './noise.ts';

/** What the empty vehicle, ready to drive, weighs, and what is in that. */
export type EmptyWeight = NonNullable<VehicleCard['runningOrder']>;

/** The empty weight of a card; a problem that says how to get one where it has none. */
export function emptyWeightOf({ runningOrder, name }: VehicleCard): Result<EmptyWeight> {
  if (runningOrder !== undefined) return ok(runningOrder);
  return fail(
    'no-running-order',
    `The card of ${clip(name, 80)} has no empty weight: weigh the vehicle axle by axle, empty and ready to drive, and write both figures on its card ("runningOrder" in the file).`,
  );
}

/**
 * The vehicle with these items on board, axle by axle against its plates: empty weight plus moments about the axles.
 * @returns the figures; a problem when the card has no empty weight, or the list takes off more than there is
 */
export function weigh(card: VehicleCard, items: readonly LoadItem[]): Result<LoadFigures> {
  const empty = emptyWeightOf(card);
  if (!empty.ok) return empty;
  const figures = weighFrom(card, empty.value, items);
  const { frontKg, rearKg, grossKg, over } = figures;
  if (!(grossKg > 0) || (Math.min(frontKg, rearKg) < -NOISE_KG && over.length === 0))
    return fail(
      'load-impossible',
      `As listed the front axle would carry ${Math.round(frontKg)} kg and the rear ${Math.round(rearKg)} kg, which cannot be: check the masses and places of what is taken off.`,
    );
  return ok(figures);
}

function weighFrom(card: VehicleCard, empty: EmptyWeight, items: readonly LoadItem[]): LoadFigures {
  const { frontKg, rearKg } = axleLoads(empty, items, card.wheelbaseM);
  const grossKg = frontKg + rearKg;
  const plates = { frontKg: card.axleKg.front, rearKg: card.axleKg.rear, grossKg: card.grossKg };
  const spare = {
    frontKg: plates.frontKg - frontKg,
    rearKg: plates.rearKg - rearKg,
    grossKg: plates.grossKg - grossKg,
  };
  const rack = rackOf(card, items);
  const emptyKg = empty.frontKg + empty.rearKg;
  return {
    frontKg,
    rearKg,
    grossKg,
    spare,
    frontShare: frontKg / grossKg,
    plates,
    runningOrder: { frontKg: empty.frontKg, rearKg: empty.rearKg, grossKg: emptyKg },
    payloadKg: plates.grossKg - emptyKg,
    payloadLeftKg: spare.grossKg,
    bindsFirst: bindsFirst(spare),
    over: overOf(spare, rack),
    centreM: centreOfMassM({ frontKg, rearKg }, card.wheelbaseM),
    ...given({ rack }),
  };
}

function rackOf(card: VehicleCard, items: readonly LoadItem[]): LoadFigures['rack'] {
  const place = rackPlace(card);
  if (place === undefined) return undefined;
  const onKg = massAt(items, place, card);
  const { limitKg } = place;
  const limitFrom = card.rack?.limitKg === undefined ? 'common practice' : 'card';
  return { onKg, limitKg, spareKg: limitKg - onKg, limitFrom };
}

function bindsFirst({ frontKg, rearKg, grossKg }: LoadFigures['spare']): LoadFigures['bindsFirst'] {
  const least = Math.min(frontKg, rearKg, grossKg);
  return grossKg === least ? 'gross' : rearKg === least ? 'rear' : 'front';
}

function overOf(spare: LoadFigures['spare'], rack: LoadFigures['rack']): LoadLimit[] {
  const over: LoadLimit[] = [];
  if (spare.grossKg < -NOISE_KG) over.push('gross');
  if (spare.frontKg < -NOISE_KG) over.push('front');
  if (spare.rearKg < -NOISE_KG) over.push('rear');
  if (rack?.limitFrom === 'card' && rack.spareKg < -NOISE_KG) over.push('rack');
  return over;
}
