import { fail, type Result } from '../../../geo/result.ts';
import type { Fetched, FetchPlan } from '../../contract/fetch.ts';
import type { ImportHooks } from '../shelf/put-on-shelf.ts';
import { fetchLineToShelf, planLine } from './by-line.ts';
import { regionSteps } from './by-region.ts';
import type { DriveToFetch, FetchTools } from './wanted.ts';

/** What was agreed to. */
export type Agreed =
  | { readonly by: 'line' }
  | { readonly by: 'region'; readonly step: 'index' | 'sizes' | 'maps'; readonly keepFiles: boolean };

/** Fetches maps of drives and puts them on the shelf. Planning sends nothing; a step is taken for one yes of the user. */
export interface Fetcher {
  /** @param server the address of an interpreter (line) or of a list of regions (region) */
  plan(drive: DriveToFetch, by: Agreed['by'], server: string): Promise<Result<FetchPlan>>;
  take(
    drive: DriveToFetch,
    agreed: Agreed & { readonly server: string },
    hooks: ImportHooks,
  ): Promise<Result<Fetched>>;
}

/** One for a program: fetches follow one another, and what servers told is remembered from step to step. */
export function createFetcher(tools: FetchTools): Fetcher {
  const regions = regionSteps(tools);
  let busy = false;
  return {
    plan: (drive, by, server) =>
      by === 'line' ? planLine(tools, drive, server) : regions.plan(drive, server),
    async take(drive, { server, ...agreed }, hooks) {
      if (busy) return fail('fetch.busy', 'A map is being fetched already. Wait for it, or cancel it first.');
      busy = true;
      try {
        return agreed.by === 'line'
          ? await fetchLineToShelf(tools, { drive, server }, hooks)
          : await regions.take(drive, { ...agreed, server }, hooks);
      } finally {
        busy = false;
      }
    },
  };
}
