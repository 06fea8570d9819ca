import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import type { Pace } from '../../../main/services/fetch/pace.ts';
import {
  type ServedWindow,
  serveWindowHere,
  type WindowParts,
  windowParts,
} from '../../support/served-window.ts';
import { findingsTold, launch, openIn, SAMPLE_TOLD, SOON_MS, type WatchedPage } from './page.ts';

/**
 * Gives each test of a file a window of its own on a data folder of its own, with the sample drive checked. The browser,
 * its page and the thread that reads maps are shared by the file: starting them costs more than most tests.
 * @param begin what each test begins with
 * @param quiet no test of the file may leave a complaint on its page
 * @param pace the clock that fetching waits by
 */
export function withSampleWindow(
  begin: (watched: WatchedPage) => unknown,
  { quiet = false, pace }: { quiet?: boolean; pace?: Pace } = {},
): void {
  let browser: Browser;
  let page: Page;
  let parts: WindowParts;
  let served: ServedWindow | undefined;
  let watched: WatchedPage | undefined;
  beforeAll(async () => {
    parts = await windowParts();
    browser = await launch();
    page = await (await browser.newContext()).newPage();
  }, SOON_MS);
  afterAll(async () => {
    await browser?.close();
    await parts?.engine.close();
  }, SOON_MS);
  beforeEach(async () => {
    served = await serveWindowHere(parts, undefined, pace);
    watched = await openIn(page, served.address);
    await findingsTold(watched.page, SAMPLE_TOLD);
    await begin(watched);
  }, 3 * SOON_MS);
  afterEach(async () => {
    if (quiet) expect(watched?.complaints).toEqual([]);
    // leaves before its program ends: what a lost program is told as belongs to no test here
    await page?.goto('about:blank');
    await served?.close();
  }, SOON_MS);
}
