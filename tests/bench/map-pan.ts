import { existsSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import type { Dispatch } from '../../main/dispatch.ts';
import type { BehindWindow } from '../support/served-window.ts';
import { makeLargeMap } from './make-large-map.ts';
import type { Task } from './page-tasks.ts';
import { panAndZoom, sayTasks, traced } from './pan-and-zoom.ts';
import { tellRow } from './table.ts';
import { CHROMIUM, withWindow } from './with-window.ts';

/**
 * Pans and zooms the window's map over about 150,000 roads in a real browser and prints the longest task of the
 * page's main thread, from a trace. Reference: the same page, left alone.
 */
const DATA = process.env['LANEGAUGE_DATA'];
/** the extracts five times over */
const MEGABYTES = 12;

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
  const status = page.locator('.status-line', { hasText: /\d roads|No map covers/ });
  await status.waitFor({ timeout: 120_000 });
  await page.waitForTimeout(4000);
  console.log(await status.textContent());
  const idle = await traced(page, () => page.waitForTimeout(3000));
  const busy = await traced(page, () => panAndZoom(page));
  sayTasks('left alone', idle);
  sayTasks('panned and zoomed', busy);
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
