import { chromium } from 'playwright-core';
import { z } from 'zod';
import { CHROMIUM } from '../with-window.ts';
import { pageLevels } from './levels.ts';
import { pageRound } from './page-round.ts';

/**
 * Drives a browser on the window of another process, started by `fork` with the window's address as its one word. Sends
 * an empty message when the drive is seen; each number it is sent is a round, answered with the page's levels. It is a
 * process of its own because what drives a browser keeps a record of all it did: in the program's own process that
 * would be counted as the program's.
 */
const browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox'] });
const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
page.on('pageerror', (error) => console.error(error));
await page.goto(z.string().parse(process.argv[2]));
await page.locator('.row-head').first().waitFor({ timeout: 120_000 });
const session = await page.context().newCDPSession(page);
await session.send('Performance.enable');

process.on('message', async (round) => {
  await pageRound(page, z.number().parse(round));
  process.send?.(await pageLevels(session));
});
process.on('disconnect', async () => {
  await browser.close();
  process.exit();
});
process.send?.({});
