import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Region } from '../../../../../geo/fetch/region/region.ts';
import { type RegionFetch, regionFetch } from '../../../../../main/services/fetch/region/region-fetch.ts';
import { type Extracts, serveExtracts } from '../../../../support/map-server/extracts.ts';
import { lineThrough } from '../../../../support/map-server/invented-regions.ts';
import { type ServedHere, serveHere } from '../../../../support/map-server/serve.ts';
import { worked } from '../../../../support/scratch-files.ts';

export interface Fetching {
  readonly fetch: RegionFetch;
  readonly server: ServedHere;
  /** the server's name and port, as sentences have it */
  readonly host: string;
  readonly folder: string;
  /** pauses that were asked for, milliseconds; none is waited */
  readonly pauses: number[];
  /** another program on the same folder and server */
  again(): RegionFetch;
}

const PATIENT = { connectMs: 2000, silenceMs: 2000, totalMs: 10_000 };

async function scratchFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'regions-'));
  onTestFinished(() => rm(folder, { recursive: true }));
  return folder;
}

/** Fetching from an extract server that runs here, into a folder of its own. */
export async function fetching(
  have: Extracts,
  more: {
    readonly silenceMs?: number;
    readonly freeBytes?: number;
    readonly nowMs?: () => number;
    readonly folder?: string;
  } = {},
): Promise<Fetching> {
  const server = await serveHere(serveExtracts(have));
  const folder = more.folder ?? (await scratchFolder());
  const pauses: number[] = [];
  const again = () =>
    regionFetch({
      folder,
      server: new URL(`${server.origin}/index-v1.json`),
      now: more.nowMs ?? (() => Date.now()),
      patience: { ...PATIENT, silenceMs: more.silenceMs ?? PATIENT.silenceMs },
      disk: {
        freeBytes: async () => more.freeBytes ?? 1e12,
        wait: async (ms, signal) => {
          signal?.throwIfAborted();
          pauses.push(ms);
        },
      },
    });
  return { fetch: again(), server, host: new URL(server.origin).host, folder, pauses, again };
}

/** A drive from the north to the south of the invented regions. */
export const ACROSS = lineThrough([
  [9, 50.5],
  [11, 50.5],
]);

/** The region of that name, as the list has it. */
export async function regionOf({ fetch }: Fetching, id: string): Promise<Region> {
  worked(await fetch.fetchIndex());
  for (const step of await fetch.plan(ACROSS))
    if (step.step === 'sizes') {
      const found = step.regions.find((region) => region.id === id);
      if (found !== undefined) return found;
    }
  throw new Error(`no region ${id}`);
}
