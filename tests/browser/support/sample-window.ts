import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { findingsTold, launch, openPage, SAMPLE_TOLD, SOON_MS, type WatchedPage } from './page.ts';
import { type Program, startProgram } from './program.ts';

/**
 * Gives each test of a file a program and a page of its own, with the sample drive checked.
 * @param begin what each test begins with
 * @param quiet no test of the file may leave a complaint on its page
 */
export function withSampleWindow(begin: (watched: WatchedPage) => unknown, { quiet = false } = {}): void {
  let browser: Browser;
  let program: Program | undefined;
  let watched: WatchedPage | undefined;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(() => browser?.close());
  beforeEach(async () => {
    program = await startProgram();
    watched = await openPage(browser, program.address);
    await findingsTold(watched.page, SAMPLE_TOLD);
    await begin(watched);
  }, 3 * SOON_MS);
  afterEach(async () => {
    if (quiet) expect(watched?.complaints).toEqual([]);
    await watched?.context.close();
    await program?.stop();
  }, SOON_MS);
}
