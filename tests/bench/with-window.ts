import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { readAssets } from '../../main/assets.ts';
import { createDispatch, type Dispatch } from '../../main/dispatch.ts';
import { serveHttp } from '../../main/loopback/http-host.ts';
import { openBackend } from '../../main/services/backend.ts';
import { createEngine } from '../../main/services/engine/engine.ts';
import { spawnEngine } from '../../main/services/engine/spawn.ts';

export const CHROMIUM = process.env['CHROMIUM'] ?? '/usr/bin/chromium';

/** The program behind the window before a page has asked it anything, and a folder for what it is to read. */
export interface Behind {
  readonly backend: Awaited<ReturnType<typeof openBackend>>;
  readonly dispatch: Dispatch;
  readonly folder: string;
}

/**
 * Serves the built window from this process, opens it in a real browser, lets `act` use the page, and clears up.
 * @param answering how the program answers, where not as it does by itself
 */
export async function withWindow(
  viewport: { readonly width: number; readonly height: number },
  act: (page: Page) => Promise<void>,
  answering: (behind: Behind) => Promise<Dispatch> = async ({ dispatch }) => dispatch,
): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'lanegauge-bench-'));
  const backend = await openBackend({
    host: 'browser',
    dataFolder: folder,
    sampleFolder: 'sample-routes',
    engine: createEngine(spawnEngine),
    now: () => new Date(),
  });
  const dispatch = createDispatch(backend.services, (error) => console.error(error));
  const host = await serveHttp({
    dispatch: await answering({ backend, dispatch, folder }),
    uploads: backend.uploads,
    assets: await readAssets('.build/window'),
    tileAddress: () => undefined,
    onSpentCode: () => {},
    onGone: () => {},
    now: () => performance.now(),
  });
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox'] });
  try {
    const page = await browser.newPage({ viewport });
    page.on('pageerror', (error) => console.error(error));
    await page.goto(host.newAddress());
    await act(page);
  } finally {
    await browser.close();
    await host.close();
    await backend.close();
    await rm(folder, { recursive: true, force: true });
  }
}
