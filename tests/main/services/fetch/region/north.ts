import { readdir } from 'node:fs/promises';
import type { StepHooks } from '../../../../../main/services/fetch/region/region-fetch.ts';
import {
  type Extracts,
  extracts,
  inventedMap,
  linesOf,
  stallAfter,
} from '../../../../support/map-server/extracts.ts';
import { boxRegion } from '../../../../support/map-server/invented-regions.ts';
import type { Reply } from '../../../../support/map-server/serve.ts';
import { type Fetching, fetching, regionOf } from './fetching.ts';

export const NORTH = inventedMap(1);
export const NEWER = inventedMap(3);
export const FILE = '/north-latest.osm.pbf';
export const SUM = `${FILE}.md5`;
export const HALF = NORTH.length >> 1;

export function serving(odd: Readonly<Record<string, Reply[]>> = {}): Extracts {
  const have = extracts([boxRegion('north', [8, 50, 10, 51])], { north: NORTH });
  for (const [path, replies] of Object.entries(odd)) have.odd.set(path, replies);
  return have;
}

/** Fetches the map of the north. */
export async function fetchNorth(
  have: Extracts,
  more: Parameters<typeof fetching>[1] & { readonly hooks?: StepHooks } = {},
) {
  const at = await fetching(have, more);
  const region = await regionOf(at, 'north');
  const fetched = await at.fetch.fetchMap(region, more.hooks);
  return { ...at, region, fetched, lines: () => linesOf(at.server).slice(1) };
}

/** Why it was not handed over, the server's name left out. */
export function whyNot({
  fetched,
  host,
}: { fetched: Awaited<ReturnType<typeof fetchNorth>>['fetched'] } & Pick<Fetching, 'host'>) {
  return fetched.ok ? 'handed over' : fetched.error.message.replaceAll(host, 'HOST');
}

/** Files of the folder but for the list of regions. */
export const left = async ({ folder }: Pick<Fetching, 'folder'>) =>
  (await readdir(folder))
    .filter((name) => !name.startsWith('regions-'))
    .map((name) => name.replace(/^[^.]+/u, 'north'));

/** Given up by the user after half. */
export async function halfFetched(have: Extracts) {
  const stop = new AbortController();
  have.odd.set(FILE, [stallAfter(have, NORTH, HALF)]);
  const at = await fetching(have);
  const region = await regionOf(at, 'north');
  const fetched = await at.fetch.fetchMap(region, {
    signal: stop.signal,
    onProgress: ({ bytes }) => {
      if (bytes >= HALF) stop.abort();
    },
  });
  have.odd.delete(FILE);
  return { ...at, region, fetched };
}
