import { copyFile, rename } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { RegionStep } from '../../../geo/fetch/region/plan-regions.ts';
import type { Region } from '../../../geo/fetch/region/region.ts';
import { given } from '../../../geo/given.ts';
import { append } from '../../../geo/lists.ts';
import { sayOlderThanBefore } from '../../../geo/report/map-age.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import type { DrawnRoute } from '../../../geo/roads/discs.ts';
import type { Fetched, FetchPlan } from '../../contract/fetch.ts';
import { readServerAddress } from '../fetch/http/address.ts';
import { type RegionFetch, regionFetch } from '../fetch/region/region-fetch.ts';
import { makeFolders } from '../files/make-folders.ts';
import type { ImportHooks } from '../shelf/put-on-shelf.ts';
import { importMap } from '../shelf/shelf-work.ts';
import type { DriveToFetch, FetchTools } from './wanted.ts';

type RegionPlan = Extract<FetchPlan, { by: 'region' }>;

interface RegionAgreed {
  readonly step: 'index' | 'sizes' | 'maps';
  readonly keepFiles: boolean;
  readonly server: string;
}

/** Plans and takes the steps of fetching by region. */
export interface RegionSteps {
  plan(drive: DriveToFetch, server: string): Promise<Result<RegionPlan>>;
  take(drive: DriveToFetch, agreed: RegionAgreed, hooks: ImportHooks): Promise<Result<Fetched>>;
}

/** Bytes a second that a plan reckons with: a line of 25 Mbit/s. */
const BYTES_PER_S = 3_000_000;
/** Of fetching and taking in one map, fetching. */
const FETCHING_SHARE = 0.7;

export function regionSteps(tools: FetchTools): RegionSteps {
  const open = new Map<string, RegionFetch>();
  const fetchOf = (address: string): Result<RegionFetch> => {
    const server = readServerAddress(address);
    if (!server.ok) return server;
    const there =
      open.get(server.value.href) ??
      regionFetch({
        folder: join(tools.dataFolder, 'fetch', 'region'),
        server: server.value,
        now: () => tools.pace.now().getTime(),
      });
    open.set(server.value.href, there);
    return ok(there);
  };
  return {
    async plan({ route }, server) {
      const found = fetchOf(server);
      return found.ok ? ok(await planNext(found.value, route)) : found;
    },
    async take(drive, { step, keepFiles, server }, hooks) {
      const found = fetchOf(server);
      if (!found.ok) return found;
      const steps = await found.value.plan(drive.route);
      const next = steps[0];
      // what was agreed to is not what comes next any more: it is shown again rather than taken
      if (next === undefined || next.step !== step)
        return ok({ kind: 'plan', plan: await planNext(found.value, drive.route) });
      return takeStep(next, { tools, fetch: found.value, drive, keepFiles, from: server, hooks });
    },
  };
}

interface Taking {
  readonly tools: FetchTools;
  readonly fetch: RegionFetch;
  readonly drive: DriveToFetch;
  readonly keepFiles: boolean;
  readonly from: string;
  readonly hooks: ImportHooks;
}

async function takeStep(step: RegionStep, taking: Taking): Promise<Result<Fetched>> {
  const { fetch, drive, hooks } = taking;
  if (step.step === 'maps') return fetchMaps(step, taking);
  hooks.onProgress({ what: step.step === 'index' ? 'Fetching the list of regions' : 'Asking for sizes' });
  const { signal } = hooks;
  const done =
    step.step === 'index'
      ? await fetch.fetchIndex({ signal })
      : step.step === 'sizes'
        ? await fetch.fetchSizes(step.regions, { signal })
        : ok({ notes: [] });
  if (!done.ok) return done;
  const plan = await planNext(fetch, drive.route);
  return ok({ kind: 'plan', plan: { ...plan, say: [...done.value.notes, ...plan.say] } });
}

async function planNext(fetch: RegionFetch, route: DrawnRoute): Promise<RegionPlan> {
  const [next] = await fetch.plan(route);
  if (next === undefined) throw new Error('a plan without a step');
  const regions =
    next.step === 'maps'
      ? next.choice.regions.map(({ region, price }) => ({
          id: region.id,
          name: region.name,
          bytes: price.bytes,
        }))
      : next.step === 'sizes'
        ? next.regions.map(({ id, name }) => ({ id, name }))
        : [];
  const bytes = next.step === 'index' ? next.bytes : next.step === 'maps' ? next.choice.bytes : undefined;
  return {
    by: 'region',
    host: 'host' in next ? next.host : '',
    step: next.step,
    say: [next.say],
    regions,
    ...given({ bytes, seconds: bytes && bytes / BYTES_PER_S }),
  };
}

/** One map after the other, each on the shelf before the next is asked for: what came stays, whatever follows. */
async function fetchMaps(
  { choice }: Extract<RegionStep, { step: 'maps' }>,
  taking: Taking,
): Promise<Result<Fetched>> {
  const maps: string[] = [];
  const notes: string[] = [];
  for (const [i, { region }] of choice.regions.entries()) {
    const one = await fetchOne(region, taking, (share) => (i + share) / choice.regions.length);
    if (one.ok) {
      maps.push(region.name);
      append(notes, one.value);
      continue;
    }
    if (maps.length === 0 || taking.hooks.signal.aborted) return one;
    notes.push(one.error.message);
  }
  const lacking = choice.leftOut.map(({ span }) => ({ fromM: span.fromM, toM: span.toM }));
  return ok({ kind: 'maps', maps, lacking, notes });
}

async function fetchOne(
  region: Region,
  { tools, fetch, keepFiles, from, hooks }: Taking,
  shareOf: (share: number) => number,
): Promise<Result<readonly string[]>> {
  const { signal, onProgress } = hooks;
  const fetched = await fetch.fetchMap(region, {
    signal,
    onProgress: ({ bytes, of }) =>
      onProgress({
        what: `Fetching ${region.name}`,
        share: shareOf(of === undefined || of === 0 ? 0 : (FETCHING_SHARE * bytes) / of),
      }),
  });
  if (!fetched.ok) return fetched;
  const { discard, notes } = fetched.value;
  const path = keepFiles ? await keep(tools.dataFolder, fetched.value.path, region) : fetched.value.path;
  const put = await importMap(
    tools,
    {
      name: region.name,
      files: [{ path, name: basename(new URL(region.url).pathname), stays: keepFiles }],
      origin: { by: 'region', from },
    },
    {
      signal,
      onProgress: ({ share = 0, ...work }) =>
        onProgress({ ...work, share: shareOf(FETCHING_SHARE + (1 - FETCHING_SHARE) * share) }),
    },
  );
  if (signal.aborted) return fail('cancelled', 'Cancelled.');
  // a file that cannot be read is no good the next time either
  await discard();
  if (!put.ok) return put;
  const { newerBefore } = put.value;
  const older = newerBefore === undefined ? [] : [sayOlderThanBefore([put.value], newerBefore)];
  return ok([...notes, ...older]);
}

/** Files that stay lie beside the shelf, under their server's names. */
async function keep(dataFolder: string, path: string, region: Region): Promise<string> {
  const folder = join(dataFolder, 'fetch', 'files');
  await makeFolders(folder);
  const kept = join(folder, basename(new URL(region.url).pathname));
  await rename(path, kept).catch(() => copyFile(path, kept));
  return kept;
}
