import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { given } from '../../geo/given.ts';
import { type Assets, readAssets } from '../../main/assets.ts';
import { createDispatch, type Dispatch } from '../../main/dispatch.ts';
import { serveHttp } from '../../main/loopback/http-host.ts';
import { type Backend, openBackend } from '../../main/services/backend.ts';
import { createEngine, type Engine } from '../../main/services/engine/engine.ts';
import { inTurn } from '../../main/services/engine/in-turn.ts';
import { reopeningEngine } from '../../main/services/engine/reopening-engine.ts';
import { spawnEngine } from '../../main/services/engine/spawn.ts';
import type { Pace } from '../../main/services/fetch/pace.ts';

/** Tests and benches, built or not, run from the root. */
const ROOT = resolve('.');

/** What windows served one after the other share: the built page, and the thread that reads maps. */
export interface WindowParts {
  readonly assets: Assets;
  readonly engine: Engine;
}

/** The program behind a window before a page has asked it anything, and the data folder it has for itself. */
export interface BehindWindow {
  readonly backend: Backend;
  readonly dispatch: Dispatch;
  readonly folder: string;
}

/** The built window served from this process. */
export interface ServedWindow {
  /** good for one page */
  readonly address: string;
  close(): Promise<void>;
}

/** Reads the built page and readies a thread for maps; whoever calls closes the engine. */
export async function windowParts(): Promise<WindowParts> {
  const assets = await readAssets(join(ROOT, '.build/window'));
  if (!assets.has('/')) throw new Error("The window is not built: run 'npm run build' first.");
  return { assets, engine: createEngine(spawnEngine) };
}

/**
 * Serves the built window with the sample, from this process, on a data folder of its own.
 * @param answering how the program answers, where not as it does by itself
 * @param pace the clock that fetching waits by
 */
export async function serveWindowHere(
  { assets, engine }: WindowParts,
  answering: (behind: BehindWindow) => Promise<Dispatch> = async ({ dispatch }) => dispatch,
  pace?: Pace,
): Promise<ServedWindow> {
  const folder = await mkdtemp(join(tmpdir(), 'lanegauge-window-'));
  const backend = await openBackend({
    dataFolder: folder,
    sampleFolder: join(ROOT, 'sample-routes'),
    // the thread outlives the window
    engine: inTurn(reopeningEngine({ ...engine, close: async () => {} })),
    now: () => new Date(),
    ...given({ pace }),
  });
  const dispatch = createDispatch(backend.services, (error) => console.error(error));
  const host = await serveHttp({
    dispatch: await answering({ backend, dispatch, folder }),
    uploads: backend.uploads,
    assets,
    tileAddress: () => backend.settings().tiles?.address,
    onSpentCode: () => {},
    onGone: () => {},
    now: () => performance.now(),
  });
  return {
    address: host.newAddress(),
    async close() {
      await host.close();
      await backend.close();
      // what the page asked for last may still be on its way to the disk
      await rm(folder, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}
