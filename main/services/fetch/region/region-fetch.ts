import { statfs } from 'node:fs/promises';
import { setTimeout as pause } from 'node:timers/promises';
import { type DrawnThrough, drawThrough } from '../../../../geo/fetch/region/drawn-through.ts';
import { planRegions, type RegionStep } from '../../../../geo/fetch/region/plan-regions.ts';
import type { Region, RegionIndex } from '../../../../geo/fetch/region/region.ts';
import { given } from '../../../../geo/given.ts';
import { ok, type Result } from '../../../../geo/result.ts';
import type { DrawnRoute } from '../../../../geo/roads/discs.ts';
import type { Patience } from '../http/watch.ts';
import { askSizes } from './ask-sizes.ts';
import { fetchIndex } from './fetch-index.ts';
import { type FetchedMap, fetchMap } from './fetch-map.ts';
import { readKeptIndex } from './kept-index.ts';
import type { MapAsk, MapProgress } from './map-ask.ts';
import { sweepRegionFiles } from './sweep-region-files.ts';

export interface RegionFetchOptions {
  /** where lists and files that are coming lie: `fetch/region` in the data folder */
  readonly folder: string;
  /** address of the server's list of regions */
  readonly server: URL;
  /** milliseconds since 1970 */
  now(): number;
  readonly patience?: Patience;
  readonly disk?: Pick<MapAsk, 'freeBytes' | 'wait'>;
}

/** How one step goes on; `signal` ends it. */
export interface StepHooks {
  readonly signal?: AbortSignal;
  onProgress?(progress: MapProgress): void;
}

/** Sentences on what was not as it should be, and the step was done all the same. */
interface Done {
  readonly notes: readonly string[];
}

/** Fetching maps by region from one server. `plan` asks nobody; each of the others is for one yes of the user. */
export interface RegionFetch {
  /** what remains to be asked for this drive, the next step first; from the list kept on this computer */
  plan(route: DrawnRoute): Promise<readonly RegionStep[]>;
  fetchIndex(hooks?: StepHooks): Promise<Result<Done>>;
  /** @param regions as the plan's step names them; what cannot be had is left out of later plans */
  fetchSizes(regions: readonly Region[], hooks?: StepHooks): Promise<Result<Done>>;
  /** one file, whole; the caller reads it and discards it */
  fetchMap(region: Region, hooks?: StepHooks): Promise<Result<FetchedMap>>;
}

/** A file of gigabytes over a slow line takes hours; silence of two minutes is no line. */
const PATIENCE: Patience = { connectMs: 30_000, silenceMs: 120_000, totalMs: 24 * 3_600_000 };

const DISK: Pick<MapAsk, 'freeBytes' | 'wait'> = {
  freeBytes: async (folder) => {
    const { bavail, bsize } = await statfs(folder);
    return bavail * bsize;
  },
  wait: (ms, signal) => pause(ms, undefined, given({ signal })),
};

export function regionFetch({
  folder,
  server,
  now,
  patience = PATIENCE,
  disk = DISK,
}: RegionFetchOptions): RegionFetch {
  const sizes = new Map<string, number>();
  const untold = new Set<string>();
  const without = new Set<string>();
  let index: RegionIndex | undefined;
  let turn: Promise<unknown> = Promise.resolve();
  /** One after the other, so that the server never has two connections of ours. */
  const inTurn = <T>(step: () => Promise<T>): Promise<T> => {
    const done = turn.then(step);
    turn = done.catch(() => {});
    return done;
  };
  let drawn: { readonly route: DrawnRoute; readonly through: DrawnThrough } | undefined;
  return {
    async plan(route) {
      index ??= (await readKeptIndex(folder, server, now()))?.index;
      if (index !== undefined && drawn?.route !== route)
        drawn = { route, through: drawThrough(index, route) };
      return planRegions(server.host, drawn?.through, { sizes, untold, without });
    },
    fetchIndex({ signal, onProgress } = {}) {
      return inTurn(async () => {
        const fetched = await fetchIndex({
          server,
          folder,
          patience,
          nowMs: now(),
          ...given({ signal, onBytes: onProgress && ((bytes: number) => onProgress({ bytes })) }),
        });
        if (!fetched.ok) return fetched;
        index = fetched.value.index;
        drawn = undefined;
        return ok({ notes: fetched.value.notes });
      });
    },
    fetchSizes(regions, { signal } = {}) {
      return inTurn(async () => {
        const asked = await askSizes({ server, regions, patience, ...given({ signal }) });
        if (!asked.ok) return asked;
        for (const [id, bytes] of asked.value.told) sizes.set(id, bytes);
        for (const id of asked.value.untold) untold.add(id);
        for (const id of asked.value.gone) without.add(id);
        return ok({ notes: asked.value.notes });
      });
    },
    fetchMap(region, { signal, onProgress } = {}) {
      return inTurn(async () => {
        await sweepRegionFiles(folder, now());
        const fetched = await fetchMap(
          { server, region, folder, patience, nowMs: now, ...disk, ...given({ signal, onProgress }) },
          now(),
        );
        if (!fetched.ok && ['map-status-404', 'map-status-410'].includes(fetched.error.code))
          without.add(region.id);
        return fetched;
      });
    },
  };
}
