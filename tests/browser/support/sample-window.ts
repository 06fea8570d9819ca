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

interface Wanted {
  /** no test of the file may leave a complaint on its page */
  readonly quiet?: boolean;
  /** the clock that fetching waits by */
  readonly pace?: Pace;
  /** brings a window that a test has used back to where `begin` takes over: then the next test has it too */
  readonly again?: (watched: WatchedPage) => unknown;
}

/**
 * Gives each test of a file a window on a data folder of its own, with the sample drive checked: a new one each, or the
 * one before brought back, where it is told how; never that of a test that failed. The browser, its page and the thread
 * that reads maps are shared by the file: starting them costs more than most tests.
 * @param begin what each test begins with
 * @returns `spend`, for a test that leaves its window in no state for another
 */
export function withSampleWindow(
  begin: (watched: WatchedPage) => unknown,
  { quiet = false, pace, again }: Wanted = {},
): { spend(): void } {
  let browser: Browser;
  let page: Page;
  let parts: WindowParts;
  let served: ServedWindow | undefined;
  let watched: WatchedPage | undefined;
  let isSpent = true;
  const leave = async () => {
    // leaves before its program ends: what a lost program is told as belongs to no test here
    await page?.goto('about:blank');
    await served?.close();
    served = undefined;
  };
  beforeAll(async () => {
    parts = await windowParts();
    browser = await launch();
    page = await (await browser.newContext()).newPage();
  }, SOON_MS);
  afterAll(async () => {
    await leave();
    await browser?.close();
    await parts?.engine.close();
  }, SOON_MS);
  beforeEach(async () => {
    if (watched === undefined || isSpent) {
      await leave();
      served = await serveWindowHere(parts, undefined, pace);
      watched = await openIn(page, served.address);
      await findingsTold(watched.page, SAMPLE_TOLD);
    } else {
      await watched.page.emulateMedia({
        colorScheme: 'light',
        media: null,
        reducedMotion: null,
        forcedColors: null,
      });
      await again?.(watched);
    }
    // until it is brought here it is fit for no test
    isSpent = true;
    await begin(watched);
    isSpent = again === undefined;
  }, 3 * SOON_MS);
  afterEach(async ({ task }) => {
    if (task.result?.state === 'fail') isSpent = true;
    const complaints = watched?.complaints.splice(0);
    if (quiet) expect(complaints).toEqual([]);
  }, SOON_MS);
  return {
    spend() {
      isSpent = true;
    },
  };
}
