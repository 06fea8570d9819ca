import { ok, type Result } from '../result.ts';
import type { VehicleCard } from '../vehicle/card.ts';
import { overDoubts } from './doubts/find-doubts.ts';
import { type DoubtedLoad, loadWithDoubts } from './doubts/load-with-doubts.ts';
import { sayCounted, sayDoubt } from './doubts/say-doubt.ts';
import type { LoadItem } from './list/load-list.ts';
import type { LoadResult } from './result.ts';

/** The vehicle as loaded, as reports and the terminal give it: figures, and every doubt in words. */
export function loadResult(card: VehicleCard, items: readonly LoadItem[]): Result<LoadResult> {
  const loaded = loadWithDoubts(card, items);
  return loaded.ok ? ok(inWords(loaded.value)) : loaded;
}

/** A load's doubts put into words. */
function inWords({ doubts, counted, ...figures }: DoubtedLoad): LoadResult {
  return {
    ...figures,
    warnings: doubts.map((doubt) => sayDoubt(doubt, 'metric')),
    notes: counted.map(sayCounted),
  };
}

const MUST_NOT_LEAVE = 'The vehicle must not leave as loaded, whatever the road allows.';

/** What a load has to say beside a drive's verdict: that it is over comes first. Sentences. */
export function sayLoaded({ over, warnings }: LoadResult): string[] {
  return over.length === 0 ? [...warnings] : [MUST_NOT_LEAVE, ...warnings];
}

/** Those of `sayLoaded` that a headline of the overload, with its kilograms, has said already. */
export function saidByHeadline(load: LoadResult): string[] {
  if (load.over.length === 0) return [];
  const plates = overDoubts(load).filter(({ kind }) => kind === 'over plate');
  return [MUST_NOT_LEAVE, ...plates.map((doubt) => sayDoubt(doubt, 'metric'))];
}
