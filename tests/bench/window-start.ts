/**
 * From starting the program to the sample drive with its findings on the page, and the size of what the page loads.
 * Reference: an empty page in the same browser, from asking for it to its first paint.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { chromium, type Page } from 'playwright-core';
import { findChromium } from '../browser/support/find-chromium.ts';
import { startProgram } from '../browser/support/program.ts';
import { tellRow } from './table.ts';

const RUNS = 5;
const ASSETS = '.build/window/assets';
const BUDGET_KB = 200;

if (!existsSync(ASSETS))
  console.log("window-start: not run, the window is not built; 'npm run build' does it");
else {
  const browser = await chromium.launch({ executablePath: findChromium(), args: ['--no-sandbox'] });
  const servedMs: number[] = [];
  const shownMs: number[] = [];
  const emptyMs: number[] = [];
  try {
    for (let run = 0; run < RUNS; run++) {
      const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
      emptyMs.push(await untilPainted(page, 'data:text/html,<p>empty'));
      const started = performance.now();
      // as on a machine without a display, its printed check goes on meanwhile
      const program = await startProgram();
      const asked = performance.now();
      servedMs.push(asked - started);
      await page.goto(program.address, { waitUntil: 'commit' });
      await page.locator('.row-head').first().waitFor();
      await nextPaint(page);
      shownMs.push(performance.now() - asked);
      await page.close();
      await program.stop();
    }
  } finally {
    await browser.close();
  }
  const [served, shown, empty] = [median(servedMs), median(shownMs), median(emptyMs)];
  console.log(
    `served in ${served.toFixed(0)} ms, findings painted ${shown.toFixed(0)} ms after the page was asked for; empty page ${empty.toFixed(0)} ms (medians of ${RUNS})`,
  );
  tellRow({
    work: 'window: first paint of the sample drive with findings, after the page is asked for',
    must: '< 0.7 s',
    aim: '< 0.4 s',
    measured: `${(shown / 1000).toFixed(2)} s`,
    reference: `empty page ${empty.toFixed(0)} ms: ${(shown / empty).toFixed(1)} ×`,
  });
  tellRow({
    work: 'start of a built program: page served',
    must: '< 1.5 s',
    aim: '< 0.7 s',
    measured: `${(served / 1000).toFixed(2)} s`,
    reference: `empty page ${empty.toFixed(0)} ms: ${(served / empty).toFixed(1)} ×`,
  });
  const kb = sizeKb();
  tellRow({
    work: 'renderer bundle at the start, compressed',
    must: `< ${BUDGET_KB} kB`,
    aim: '',
    measured: `${kb.toFixed(0)} kB`,
    reference: `of the budget: ${(kb / BUDGET_KB).toFixed(2)} ×`,
  });
}

async function untilPainted(page: Page, address: string): Promise<number> {
  const asked = performance.now();
  await page.goto(address, { waitUntil: 'commit' });
  await page.locator('p').first().waitFor();
  await nextPaint(page);
  return performance.now() - asked;
}

/** Given as text: the page's functions are no part of what the benches are compiled against. */
function nextPaint(page: Page): Promise<unknown> {
  return page.evaluate(
    'new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done())))',
  );
}

/** Of what is loaded with the window: what the page names, and its worker. */
function sizeKb(): number {
  const page = readFileSync(`${ASSETS}/../index.html`, 'utf8');
  return readdirSync(ASSETS)
    .filter((name) => /\.(js|css)$/.test(name) && (page.includes(name) || name.startsWith('worker')))
    .reduce((sum, name) => sum + gzipSync(readFileSync(`${ASSETS}/${name}`)).length / 1000, 0);
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}
