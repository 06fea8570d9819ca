import { chooseRegions, type Known, type RegionChoice, regionsToAskAbout } from './choose-regions.ts';
import type { DrawnThrough } from './drawn-through.ts';
import type { Region } from './region.ts';
import { sayIndexStep, sayMapsStep, sayNoRegion, saySizesStep } from './say-regions.ts';

/** What would be asked of the server next. Each step waits for a yes of its own. */
export type RegionStep =
  /** the list of regions: tells nothing of the drive. `bytes` is about its size */
  | { readonly step: 'index'; readonly host: string; readonly bytes: number; readonly say: string }
  /** how large the files of these regions are */
  | {
      readonly step: 'sizes';
      readonly host: string;
      readonly regions: readonly Region[];
      readonly say: string;
    }
  /** the maps themselves */
  | { readonly step: 'maps'; readonly host: string; readonly choice: RegionChoice; readonly say: string }
  /** no region of the list holds any of the drive: nothing to ask */
  | { readonly step: 'none'; readonly say: string };

/** The public list had 3.8 MB in September 2026. */
const INDEX_BYTES = 4_000_000;

/**
 * The steps that remain until the maps of a drive are here, the next one first. Nothing is asked by planning.
 * @param host the server, as the user knows it
 * @param drawn the drive laid over the list of regions; undefined while there is no list, and then it comes first
 */
export function planRegions(
  host: string,
  drawn: DrawnThrough | undefined,
  known: Known,
): readonly RegionStep[] {
  if (drawn === undefined)
    return [{ step: 'index', host, bytes: INDEX_BYTES, say: sayIndexStep(host, INDEX_BYTES) }];
  const choice = chooseRegions(drawn, known);
  if (choice.regions.length === 0) return [{ step: 'none', say: sayNoRegion(host) }];
  const regions = regionsToAskAbout(drawn, known);
  const maps: RegionStep = { step: 'maps', host, choice, say: sayMapsStep(host, choice) };
  if (regions.length === 0) return [maps];
  return [{ step: 'sizes', host, regions, say: saySizesStep(host, regions) }, maps];
}
