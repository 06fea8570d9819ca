import { ok, type Result } from '../../result.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { kindOf } from '../list/item-kind.ts';
import type { LoadItem } from '../list/load-list.ts';
import { personalEffectsKg } from '../list/presets.ts';
import { BY_ITSELF, onTheWay } from '../tanks/on-the-way.ts';
import type { LoadFigures } from '../weigh/figures.ts';
import { type LoadCard, loadCardOf, type ReadyCard } from '../weigh/load-card.ts';
import { spareOf } from '../weigh/sums.ts';
import { type EmptyWeight, weigh } from '../weigh/weigh.ts';
import type { Counted, Doubt, OverOnTheWay } from './doubt.ts';
import { findDoubts } from './find-doubts.ts';

/** A vehicle as loaded, with everything that is doubtful about it. */
export interface DoubtedLoad extends LoadFigures {
  /** what is over or doubtful, the gravest first */
  readonly doubts: readonly Doubt[];
  /** what was counted, and what was not */
  readonly counted: readonly Counted[];
}

/**
 * The vehicle as loaded, and what the tanks do to it on the way: a plate that is kept at the start and exceeded as
 * water is used is a doubt; one exceeded by filling up is only told.
 */
export function loadWithDoubts(card: LoadCard, items: readonly LoadItem[]): Result<DoubtedLoad> {
  const start = loadAsItStands(card, items);
  if (!start.ok) return start;
  const { doubts, counted, over } = start.value;
  const later = overOnTheWay(card, items, over);
  return ok({
    ...start.value,
    doubts: [...doubts, ...later.filter(({ moment }) => BY_ITSELF[moment])],
    counted: [...counted, ...later.filter(({ moment }) => !BY_ITSELF[moment]), ...fewThings(card, items)],
  });
}

/** The same without what comes on the way. */
export function loadAsItStands(given: LoadCard, items: readonly LoadItem[]): Result<DoubtedLoad> {
  const ready = loadCardOf(given);
  if (!ready.ok) return ready;
  const card = ready.value;
  const weighed = weigh(card, items);
  if (!weighed.ok) return weighed;
  return ok({
    ...weighed.value,
    doubts: findDoubts(card, card.runningOrder, items, weighed.value),
    counted: [...estimateOf(card), ...countedIn(card.runningOrder, items)],
  });
}

/** What of the empty weight was not weighed. */
function estimateOf({ estimated, runningOrder }: ReadyCard): Counted[] {
  if (estimated === undefined) return [];
  return [{ kind: 'estimated', of: estimated, totalKg: runningOrder.frontKg + runningOrder.rearKg }];
}

function countedIn(
  { includesDriver, includesFreshWater }: EmptyWeight,
  items: readonly LoadItem[],
): Counted[] {
  const counted: Counted[] = [{ kind: 'empty weight', includesDriver, includesFreshWater }];
  const water = items.some((item) => kindOf(item) === 'fresh-water');
  if (!includesFreshWater && !water) counted.push({ kind: 'no water' });
  if (items.some((item) => item.massKg < 0)) counted.push({ kind: 'taken off' });
  return counted;
}

function overOnTheWay(
  card: VehicleCard,
  items: readonly LoadItem[],
  overAtStart: LoadFigures['over'],
): OverOnTheWay[] {
  return onTheWay(card, items).flatMap(({ kind, result }) => {
    const over = result.over
      .filter((limit) => !overAtStart.includes(limit))
      .map((limit) => ({ limit, overKg: -spareOf(result, limit) }));
    return over.length === 0 ? [] : [{ kind: 'over on the way' as const, moment: kind, over }];
  });
}

/** A list with fewer things than a maker must allow for has probably forgotten some. */
function fewThings(card: VehicleCard, items: readonly LoadItem[]): Counted[] {
  const things = items.filter((item) => kindOf(item) === 'thing' && item.massKg > 0);
  // a line of several people counts as one, so that this says too little rather than too much
  const persons = 1 + items.filter((item) => kindOf(item) === 'person').length;
  const listedKg = things.reduce((sum, { massKg }) => sum + massKg, 0);
  const leastKg = personalEffectsKg(persons, card.lengthM);
  if (items.length === 0 || listedKg >= leastKg) return [];
  return [{ kind: 'few things', listedKg, leastKg }];
}
