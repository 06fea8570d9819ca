import { existsSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { tasksIn } from './page-tasks.ts';
import { tellRow } from './table.ts';
import { CHROMIUM, withWindow } from './with-window.ts';

/**
 * Plays the swing lessons on the sample in a real browser and prints the times between frames and the longest tasks of
 * the page's main thread. Reference: the same page with nothing playing, which shows what the machine itself allows.
 */
const WATCH_MS = 5000;

interface Lesson {
  readonly name: string;
  set?(page: Page): Promise<unknown>;
}
/** Gaps so wide that nothing stops the vehicle. */
const LESSONS: readonly Lesson[] = [
  { name: 'Pulling away', set: (page) => page.getByRole('slider', { name: /^Gap/ }).fill('1.2') },
  { name: 'Into a side road' },
  { name: 'Mini-roundabout', set: (page) => page.getByLabel('Compare with').selectOption({ index: 1 }) },
];

/** Milliseconds between frames, for a while. */
async function frames(page: Page): Promise<number[]> {
  const found: unknown = await page.evaluate(
    `new Promise((done) => { const gaps = []; let before; const began = performance.now(); const step = (now) => {
      if (before !== undefined) gaps.push(now - before); before = now;
      if (now - began < ${WATCH_MS}) requestAnimationFrame(step); else done(gaps); }; requestAnimationFrame(step); })`,
  );
  return found as number[];
}

interface Seen {
  readonly medianMs: number;
  readonly p95Ms: number;
  readonly longestTaskMs: number;
}

function say(what: string, gaps: readonly number[], tasks: ReturnType<typeof tasksIn>): Seen {
  const sorted = [...gaps].sort((a, b) => a - b);
  const share = (of: number) => sorted[Math.min(sorted.length - 1, Math.floor(of * sorted.length))] ?? 0;
  const seen = { medianMs: share(0.5), p95Ms: share(0.95), longestTaskMs: tasks[0]?.wallMs ?? 0 };
  console.log(
    `${what}: ${sorted.length} frames, median ${seen.medianMs.toFixed(1)} ms, p95 ${seen.p95Ms.toFixed(1)} ms, longest ${share(1).toFixed(1)} ms; longest task ${seen.longestTaskMs.toFixed(1)} ms (most work in one ${Math.max(0, ...tasks.map(({ cpuMs }) => cpuMs)).toFixed(1)} ms)`,
  );
  return seen;
}

async function watch(what: string, page: Page): Promise<Seen> {
  const browser = page.context().browser();
  if (!browser) throw new Error('no browser');
  await browser.startTracing(page, { categories: ['toplevel', 'disabled-by-default-devtools.timeline'] });
  const gaps = await frames(page);
  return say(what, gaps, tasksIn(await browser.stopTracing()));
}

async function run(page: Page): Promise<void> {
  await page.locator('.row-head').first().waitFor({ timeout: 60_000 });
  await page.getByRole('tab', { name: 'Swing' }).click();
  await page.waitForTimeout(1000);
  const idle = await watch('nothing playing', page);
  const played: Seen[] = [];
  for (const { name, set } of LESSONS) {
    await page.getByRole('button', { name, exact: true }).click();
    await set?.(page);
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    played.push(await watch(name, page));
  }
  await page.getByLabel('Compare with').selectOption({ index: 0 });
  await page.getByRole('button', { name: 'Steer by hand' }).click();
  await page.keyboard.down('ArrowUp');
  played.push(await watch('Steered by hand', page));
  await page.keyboard.up('ArrowUp');
  const worst = (of: keyof Seen) => Math.max(...played.map((seen) => seen[of])).toFixed(1);
  tellRow({
    work: 'swing view playing, sample',
    must: '60 frames a second',
    aim: 'no task over 16 ms',
    measured: `median ${worst('medianMs')} ms, p95 ${worst('p95Ms')} ms, longest task ${worst('longestTaskMs')} ms`,
    reference: `nothing playing: median ${idle.medianMs.toFixed(1)} ms, p95 ${idle.p95Ms.toFixed(1)} ms`,
  });
}

if (existsSync(CHROMIUM)) await withWindow({ width: 1280, height: 800 }, run);
else console.log(`swing-view: not run, there is no browser at ${CHROMIUM}`);
