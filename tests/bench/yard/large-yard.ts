/**
 * The yard with 5,000 drives and 50 vehicles, every pair checked, in a real browser: scrolled, searched, filtered and
 * sorted. Printed is the longest task of the page's main thread, from a trace. Reference: the same page, left alone.
 */
import type { Page } from 'playwright-core';
import { ok } from '../../../geo/result.ts';
import type { Yard, YardCell } from '../../../main/contract/yard/yard.ts';
import type { Dispatch } from '../../../main/dispatch.ts';
import type { BehindWindow } from '../../support/served-window.ts';
import type { Task } from '../page-tasks.ts';
import { sayTasks, traced } from '../pan-and-zoom.ts';
import { tellRow } from '../table.ts';
import { withWindow } from '../with-window.ts';

const DRIVES = 5000;
const VEHICLES = 50;
const LEVELS = ['barred', 'tight', 'unknown', 'care', 'clear'] as const;
const ENDS = ['Moor', 'Coast', 'Überdorf', 'Hill'];

const YARD: Yard = {
  folder: '/yard',
  drives: Array.from({ length: DRIVES }, (_, i) => ({
    id: `drive-${i}`,
    name: `Drive ${i} to ${ENDS[i % ENDS.length]}`,
    file: `drive-${i}.gpx`,
    track: 1,
    lengthM: 20_000 + (i % 300) * 1000,
    heads: [],
  })),
  vehicles: Array.from({ length: VEHICLES }, (_, i) => ({
    id: `vehicle-${i}`,
    vehicleId: `v${i}`,
    name: `Coach-built ${i}, long wheelbase`,
  })),
  bin: [],
  apart: [],
  notices: [],
};

function cellOf(drive: number, vehicle: number): YardCell {
  const verdict = LEVELS[(drive + (vehicle >> 3)) % LEVELS.length] ?? 'clear';
  const stop = { subject: 'height', kind: 'limit', at: { lat: 54, lon: 9 } } as const;
  const stops =
    verdict === 'barred' ? [{ ...stop, key: `way${drive % 200}`, road: `Lane ${drive % 200}` }] : [];
  const counts = { barred: 0, tight: 0, unknown: 0, care: 0 };
  return {
    drive: `drive-${drive}`,
    vehicle: `vehicle-${vehicle}`,
    cell: {
      verdict,
      counts: { ...counts, ...(verdict === 'clear' ? {} : { [verdict]: 1 + (drive % 7) }) },
      stops,
      trouble: [],
    },
    stale: [],
    changes: [],
  };
}

async function answer({ dispatch }: BehindWindow): Promise<Dispatch> {
  return async (name, request, hooks) => {
    if (name === 'yard') return ok(YARD);
    if (name !== 'yardCells') return dispatch(name, request, hooks);
    for (let drive = 0; drive < DRIVES; drive += 10) {
      const cells = Array.from({ length: 10 * VEHICLES }, (_, i) =>
        cellOf(drive + Math.floor(i / VEHICLES), i % VEHICLES),
      );
      hooks.onProgress({ cells });
      if (drive % 500 === 0) await new Promise((resolve) => setTimeout(resolve, 10));
    }
    return ok({});
  };
}

async function run(page: Page): Promise<void> {
  await page.getByRole('tab', { name: 'Yard', exact: true }).click();
  await page.getByRole('gridcell').first().waitFor({ timeout: 60_000 });
  await page.waitForTimeout(8000);
  const idle = await traced(page, () => page.waitForTimeout(3000));
  sayTasks('left alone', idle);
  const told: [string, readonly Task[]][] = [];
  const trace = async (what: string, act: () => Promise<unknown>) => {
    const tasks = await traced(page, async () => {
      await act();
      await page.waitForTimeout(600);
    });
    sayTasks(what, tasks);
    told.push([what, tasks]);
  };
  await trace('scrolled', async () => {
    await page.mouse.move(700, 500);
    for (let i = 0; i < 40; i++) await page.mouse.wheel(i % 5 === 4 ? 300 : 0, 400);
  });
  await trace('scrolled far', () =>
    page.evaluate("document.querySelector('.yard-scroll').scrollTop = 130000"),
  );
  await trace('searched', () =>
    page.getByPlaceholder('name, file or road').pressSequentially('uber', { delay: 80 }),
  );
  await trace('search ended', () => page.getByPlaceholder('name, file or road').fill(''));
  await trace('what a vehicle can take', () =>
    page.locator('.yard-filters select').first().selectOption('vehicle-3'),
  );
  await trace('where nothing bars it', () =>
    page.locator('.yard-filters select').nth(1).selectOption('takes'),
  );
  await trace('worst first', () => page.locator('.yard-filters select').nth(2).selectOption('worst'));
  await trace('what stops most', () => page.locator('.yard-beside', { hasText: 'What stops most' }).click());
  const longest = (tasks: readonly Task[]) => tasks[0] ?? { wallMs: 0, cpuMs: 0 };
  const [worst] = told.sort((a, b) => longest(b[1]).cpuMs - longest(a[1]).cpuMs);
  tellRow({
    work: `yard of ${DRIVES} drives × ${VEHICLES} vehicles scrolled, searched, filtered, sorted`,
    must: 'no task over 50 ms',
    aim: '',
    measured: `longest task ${longest(worst?.[1] ?? []).cpuMs.toFixed(1)} ms of processor (${worst?.[0]}), ${longest(worst?.[1] ?? []).wallMs.toFixed(1)} ms of time`,
    reference: `left alone: longest task ${longest(idle).cpuMs.toFixed(1)} ms`,
  });
}

await withWindow({ width: 1440, height: 900 }, run, answer);
