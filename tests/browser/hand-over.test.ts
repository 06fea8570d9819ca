import { readFile } from 'node:fs/promises';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { LONG_MS, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';
import { type States, walkStates } from './support/walk-states.ts';

let watched: WatchedPage;

withSampleWindow((opened) => {
  watched = opened;
});

const button = (page: Page, name: string) => page.getByRole('button', { name });
const sheet = (page: Page) => page.getByRole('region', { name: /^Drive sheet / });

const STATES: States = [
  [
    'a barred drive asks once more',
    async (page) => {
      await button(page, 'Hand over…').click();
      await button(page, 'Hand it over even so').waitFor({ timeout: SOON_MS });
    },
  ],
  [
    'a drive handed over',
    async (page) => {
      await button(page, 'Hand it over even so').click();
      await sheet(page).waitFor({ timeout: LONG_MS });
      await sheet(page).getByRole('heading', { name: 'Do not drive' }).waitFor({ timeout: SOON_MS });
    },
  ],
];

it(
  'a drive is handed over from Drive: the sheet opens with its verdict, is printed alone, and goes to the phone in one small archive',
  async () => {
    await walkStates(watched, STATES, [390, 1440]);
    const { page } = watched;
    const downloaded = page.waitForEvent('download');
    await button(page, 'Save for the phone').click();
    const bytes = await readFile(await (await downloaded).path());
    expect(bytes.length).toBeLessThan(2_000_000);
    const files = unzipSync(bytes);
    expect(Object.keys(files)).toEqual(
      expect.arrayContaining(['phone.html', 'drive.gpx', 'how-to-open.txt']),
    );
    expect(new TextDecoder().decode(files['phone.html'])).toContain('Do not drive');
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.window > .views').isVisible()).toBe(false);
    expect(await sheet(page).isVisible()).toBe(true);
    await page.emulateMedia({ media: 'screen' });
    await page.getByRole('dialog').getByRole('button', { name: 'Close', exact: true }).click();
    await page.getByRole('tab', { name: 'Yard' }).click();
    await page.getByRole('button', { name: /^What is out/ }).click();
    await page.getByRole('button', { name: /^Show sheet / }).click();
    await sheet(page).waitFor({ timeout: SOON_MS });
  },
  2 * LONG_MS,
);
