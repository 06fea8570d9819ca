import { existsSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import type { Dispatch } from '../../main/dispatch.ts';
import type { BehindWindow } from '../support/served-window.ts';
import { makeLargeMap } from './make-large-map.ts';
import { type Task, tasksIn } from './page-tasks.ts';
import { tellRow } from './table.ts';
import { CHROMIUM, withWindow } from './with-window.ts';

/**
 * Pans and zooms the window's map over about 150,000 roads in a real browser and prints the longest task of the
 * page's main thread, from a trace. Reference: the same page, left alone.
 */
const DATA = process.env['LANEGAUGE_DATA'];
/** the extracts five times over */
const MEGABYTES = 12;

/** Out until all copies are seen, then in again, dragging to and fro at each zoom. */
async function panAndZoom(page: Page): Promise<void> {
  const box = await page.locator('.drive-map').boundingBox();
  if (!box) throw new Error('there is no map');
  const x = box.x + box.width / 2;
  const y = box.y + box.height / 2;
  const drag = async (dx: number, dy: number) => {
    await page.mouse.move(x - dx / 2, y - dy / 2);
    await page.mouse.down();
    await page.mouse.move(x + dx / 2, y + dy / 2, { steps: 15 });
    await page.mouse.up();
    await page.waitForTimeout(400);
  };
  await page.mouse.move(x, y);
  for (let out = 0; out < 4; out++) {
    await page.mouse.wheel(0, 60);
    await page.waitForTimeout(500);
  }
  await page.waitForTimeout(4000);
  // SHOT names a picture of the fullest view, to see that there was something to draw
  if (process.env['SHOT']) await page.screenshot({ path: process.env['SHOT'] });
  for (let zoom = 0; zoom < 8; zoom++) {
    await drag(300, 120);
    await drag(-360, 60);
    await drag(60, -180);
    await page.mouse.wheel(0, -60);
    await page.waitForTimeout(500);
  }
}

async function traced(page: Page, act: () => Promise<void>): Promise<Task[]> {
  const browser = page.context().browser();
  if (!browser) throw new Error('no browser');
  await browser.startTracing(page, { categories: ['toplevel', 'disabled-by-default-devtools.timeline'] });
  await act();
  return tasksIn(await browser.stopTracing());
}

function say(when: string, tasks: readonly Task[]): void {
  const cpu = tasks.map(({ cpuMs }) => cpuMs).sort((a, b) => b - a);
  const few = (values: readonly number[]) =>
    values
      .slice(0, 5)
      .map((ms) => ms.toFixed(1))
      .join(', ');
  const over = tasks.filter(({ wallMs }) => wallMs > 100).length;
  console.log(
    `${when}: longest tasks ${few(tasks.map(({ wallMs }) => wallMs))} ms (${over} over 100 ms of ${tasks.length}); most work in one task ${few(cpu)} ms`,
  );
}

/** Whatever the page opens at its start, it gets the large map and a straight line of far-apart points through it. */
async function answerLarge(data: string, { backend, dispatch, folder }: BehindWindow): Promise<Dispatch> {
  const map = await makeLargeMap(data, MEGABYTES);
  const points = Array.from({ length: 12 }, (_, i) => `<trkpt lat="52.37" lon="${9.6 + i * 0.01}"/>`).join(
    '',
  );
  const gpx = join(folder, 'line.gpx');
  await writeFile(
    gpx,
    `<?xml version="1.0"?><gpx version="1.1" creator="bench" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>${points}</trkseg></trk></gpx>`,
  );
  const [mapFile, driveFile] = await Promise.all([
    backend.uploads.addPath(map),
    backend.uploads.addPath(gpx),
  ]);
  if (!mapFile.ok || !driveFile.ok) throw new Error('the files cannot be opened');
  return (name, request, hooks) =>
    dispatch(
      name,
      name === 'openMap'
        ? { source: mapFile.value.source }
        : name === 'openDrive'
          ? { source: driveFile.value.source }
          : request,
      hooks,
    );
}

async function run(page: Page): Promise<void> {
  const status = page.locator('.status-line', { hasText: /\d roads/ });
  await status.waitFor({ timeout: 120_000 });
  await page.waitForTimeout(4000);
  console.log(await status.textContent());
  const idle = await traced(page, () => page.waitForTimeout(3000));
  const busy = await traced(page, () => panAndZoom(page));
  say('left alone', idle);
  say('panned and zoomed', busy);
  const longest = (tasks: readonly Task[]) => tasks[0]?.wallMs.toFixed(1) ?? '0';
  tellRow({
    work: `map panned and zoomed, ${/[\d,]+ roads/.exec((await status.textContent()) ?? '')?.[0] ?? 'roads'}`,
    must: 'no task over 100 ms',
    aim: 'none over 16 ms',
    measured: `longest task ${longest(busy)} ms`,
    reference: `left alone: longest task ${longest(idle)} ms`,
  });
}

if (!DATA) console.log('map-pan: not run, LANEGAUGE_DATA names no folder with maps/');
else if (!existsSync(CHROMIUM)) console.log(`map-pan: not run, there is no browser at ${CHROMIUM}`);
else {
  const maps = join(DATA, 'maps');
  await withWindow({ width: 1920, height: 900 }, run, (behind) => answerLarge(maps, behind));
}
