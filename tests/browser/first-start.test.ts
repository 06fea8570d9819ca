import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findElectron, hasDisplay } from '../../main/cli/start/find-electron.ts';
import {
  findingsTold,
  LONG_MS,
  launch,
  openPage,
  rowsOf,
  SAMPLE_TOLD,
  type WatchedPage,
} from './support/page.ts';
import { type Program, startProgram } from './support/program.ts';

let browser: Browser;
let program: Program;
let watched: WatchedPage;

beforeAll(async () => {
  const electron = findElectron();
  if (electron === undefined || !hasDisplay(process.env, process.platform))
    console.log(
      `The journeys run in Chromium against the program's own server; its Electron window is not driven here: ${electron === undefined ? "Electron's program is not on this computer" : 'there is no display'}.`,
    );
  program = await startProgram();
  browser = await launch();
  watched = await openPage(await browser.newContext(), program.address);
}, LONG_MS);
afterAll(async () => {
  await browser?.close();
  await program?.stop();
});

describe('the built program, started on a computer that never had it', { timeout: LONG_MS }, () => {
  it('shows the sample drive with its findings, and the caution with the verdict', async () => {
    const { page } = watched;
    await findingsTold(page, SAMPLE_TOLD);
    expect(await page.getByRole('heading', { level: 2 }).first().textContent()).toBe('Barred');
    const barred = (await rowsOf(page)).filter((row) => row.startsWith('Barred'));
    expect(barred.map((row) => row.split('\n')[0])).toEqual([
      'Barred width',
      'Barred height',
      'Barred weight',
    ]);
    expect(barred[1]).toContain('0.21 m over');
    expect(await page.getByText('Signs and the road decide.').isVisible()).toBe(true);
    expect(watched.complaints).toEqual([]);
  });
});
