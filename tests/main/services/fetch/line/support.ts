import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { DrawnRoute } from '../../../../../geo/roads/discs.ts';
import { fetchLine, type LineFetchHooks } from '../../../../../main/services/fetch/line/fetch-line.ts';
import { planLineFetch } from '../../../../../main/services/fetch/line/plan-line-fetch.ts';
import { type FastPace, fastPace } from '../../../../support/map-server/fast-pace.ts';
import {
  type OverpassOptions,
  type ServedOverpass,
  serveOverpass,
} from '../../../../support/map-server/serve-overpass.ts';
import { straightMap } from '../../../../support/map-server/straight-map.ts';
import { worked } from '../../../../support/scratch-files.ts';

/** A data folder that goes when the test ends. */
export function dataFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'fetch-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export interface Trial {
  readonly server: ServedOverpass;
  readonly folder: string;
  readonly route: DrawnRoute;
  readonly pace: FastPace;
  /** Plans and fetches once. */
  fetch(hooks?: LineFetchHooks): ReturnType<typeof fetchLine>;
  plan(): ReturnType<typeof planLineFetch>;
  /** how long it waited for the server, without the second after each question */
  waitsS(): number[];
  /** a sentence, the server's name and port left out */
  plain(sentence: string): string;
}

/** The straight road's drive and a server that has its map, or behaves as told. */
export async function trial(
  options: OverpassOptions & { readonly count?: number; readonly folder?: string } = {},
): Promise<Trial> {
  const { map, route } = straightMap(options.count);
  const folder = options.folder ?? dataFolder();
  const server = await serveOverpass(map, options);
  const pace = fastPace();
  const plan = () => planLineFetch(route, { server: server.address.href, dataFolder: folder, pace });
  return {
    server,
    folder,
    route,
    pace,
    plan,
    fetch: async (hooks) => fetchLine(worked(await plan()), hooks),
    waitsS: () => pace.waitsS.filter((seconds) => seconds !== 1),
    plain: (sentence) => sentence.replaceAll(server.address.host, 'HOST'),
  };
}
