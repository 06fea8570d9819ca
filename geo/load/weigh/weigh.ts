import { given } from '../../given.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import type { LoadItem } from '../list/load-list.ts';
import { massAt, rackPlace } from '../places/stow-places.ts';
import { axleLoads, centreOfMassM } from './axle-loads.ts';
import type { LoadFigures, LoadLimit } from './figures.ts';
import { type LoadCard, loadCardOf, type ReadyCard } from './load-card.ts';
import { NOISE_KG } from './noise.ts';

/** What the empty vehicle, ready to drive, weighs, and what is in that. */
export type EmptyWeight = NonNullable<VehicleCard['runningOrder']>;

/**
 * The vehicle with these items on board, axle by axle against its plates: empty weight plus moments about the axles.
 * @returns the figures, estimated where the card has one total alone; a problem when it has none, or the list takes off more than there is
 */
export function weigh(card: LoadCard, items: readonly LoadItem[]): Result<LoadFigures> {
  const ready = loadCardOf(card);
  if (!ready.ok) return ready;
  const figures = weighFrom(ready.value, items);
  const { frontKg, rearKg, grossKg, over } = figures;
  if (!(grossKg > 0) || (Math.min(frontKg, rearKg) < -NOISE_KG && over.length === 0))
    return fail(
      'load-impossible',
      `As listed the front axle would carry ${Math.round(frontKg)} kg and the rear ${Math.round(rearKg)} kg, which cannot be: check the masses and places of what is taken off.`,
    );
  return ok(figures);
}

function weighFrom(card: ReadyCard, items: readonly LoadItem[]): LoadFigures {
  const { runningOrder: empty, estimated } = card;
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
    ...given({
      rack,
      estimated: estimated === undefined ? undefined : (true as const),
      grossEstimated: estimated === 'axles and total' ? (true as const) : undefined,
    }),
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
