import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { readAssets } from '../../main/assets.ts';
import { createDispatch, type Dispatch } from '../../main/dispatch.ts';
import { serveHttp } from '../../main/loopback/http-host.ts';
import { openHouse } from '../../main/services/create-services.ts';
import { createEngine } from '../../main/services/engine/engine.ts';
import { spawnEngine } from '../../main/services/engine/spawn.ts';

export const CHROMIUM = process.env['CHROMIUM'] ?? '/usr/bin/chromium';

/** The program behind the window before a page has asked it anything, and a folder for what it is to read. */
export interface Behind {
  readonly house: Awaited<ReturnType<typeof openHouse>>;
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
  const house = await openHouse({
    host: 'browser',
    dataFolder: folder,
    sampleFolder: 'sample-routes',
    engine: createEngine(spawnEngine),
    now: () => new Date(),
  });
  const dispatch = createDispatch(house.services, (error) => console.error(error));
  const host = await serveHttp({
    dispatch: await answering({ house, dispatch, folder }),
    uploads: house.uploads,
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
    await house.close();
    await rm(folder, { recursive: true, force: true });
  }
}
