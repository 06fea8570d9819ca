/**
 * Pans and zooms the window's map over a large shelf in a real browser, out until the thinned layers are drawn and in
 * again to houses, and prints the longest task of the page's main thread. Reference: the same page, left alone. A data
 * folder with a shelf and a drive on it are named: `pan.js HOME DRIVE.gpx`; cold-check.ts makes both.
 */
import { existsSync } from 'node:fs';
import { symlink } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import type { Dispatch } from '../../../main/dispatch.ts';
import { shelfFolder } from '../../../main/services/shelf/where-shelf.ts';
import type { BehindWindow } from '../../support/served-window.ts';
import { panAndZoom, sayTasks, traced } from '../pan-and-zoom.ts';
import { tellRow } from '../table.ts';
import { CHROMIUM, withWindow } from '../with-window.ts';

const [home = '.bench/home-400', drive = '.bench/drive-30.gpx'] = process.argv.slice(2);
/** From the streets of the drive to a whole country. */
const ZOOMS_OUT = 6;

/** Whatever the page opens at its start, it gets the drive, held against the shelf. */
async function answerShelf({ backend, dispatch, folder }: BehindWindow): Promise<Dispatch> {
  await symlink(resolve(shelfFolder(home)), shelfFolder(folder));
  const file = await backend.uploads.addPath(resolve(drive));
  if (!file.ok) throw new Error(file.error.message);
  const { source } = file.value;
  return (name, request, hooks) => {
    if (name === 'openMap') return dispatch(name, { source: { kind: 'shelf' }, about: source }, hooks);
    return dispatch(name, name === 'openDrive' ? { source } : request, hooks);
  };
}

async function run(page: Page): Promise<void> {
  const status = page.locator('.status-line', { hasText: /From your shelf/ });
  await status.waitFor({ timeout: 120_000 });
  await page.waitForTimeout(4000);
  // what the first pointer over the map costs is another question
  await page.locator('.drive-map').hover();
  await page.waitForTimeout(2000);
  const idle = await traced(page, () => page.waitForTimeout(3000));
  const busy = await traced(page, () => panAndZoom(page, ZOOMS_OUT));
  sayTasks('left alone', idle);
  sayTasks('panned and zoomed', busy);
  tellRow({
    work: 'map panned and zoomed over a large shelf',
    must: 'no task over 50 ms',
    aim: 'none over 16 ms',
    measured: `longest task ${busy[0]?.wallMs.toFixed(1)} ms`,
    reference: `left alone: longest task ${idle[0]?.wallMs.toFixed(1)} ms`,
  });
}

if (!existsSync(shelfFolder(home)) || !existsSync(drive))
  console.log(`shelf/pan: not run, there is no shelf at ${home} or no drive at ${drive}`);
else if (!existsSync(CHROMIUM)) console.log(`shelf/pan: not run, there is no browser at ${CHROMIUM}`);
else await withWindow({ width: 1920, height: 900 }, run, answerShelf);
