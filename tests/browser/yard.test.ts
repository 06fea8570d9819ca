import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { ELSEWHERE, gpx, renamedDrive } from './support/files.ts';
import { LONG_MS, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';
import { type States, walkStates } from './support/walk-states.ts';

let watched: WatchedPage;
withSampleWindow((opened) => {
  watched = opened;
});

const tab = (page: Page, name: string) => page.getByRole('tab', { name, exact: true });
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
const says = (page: Page, text: string | RegExp) =>
  page.getByText(text).first().waitFor({ timeout: LONG_MS });
/** What the cell that has the focus says: in words of its own, or in what it shows. */
const focused = (page: Page) =>
  page.evaluate("document.activeElement.ariaLabel ?? document.activeElement.closest('td, th').textContent");

/** From an empty yard to a drive opened from its cell. */
const states: States = [
  [
    'nothing there yet',
    async (page) => {
      await tab(page, 'Yard').click();
      await says(page, 'Which vehicle may take which drive');
    },
  ],
  [
    'drives dropped, the bad one named',
    async (page) => {
      await press(page, 'Shelf');
      await page
        .locator('dialog input[type=file]')
        .first()
        .setInputFiles(resolve('sample-routes/district.osm.pbf'));
      await says(page, /^district is on your shelf/);
      await page.keyboard.press('Escape');
      await page
        .getByLabel('Drives for the yard')
        .setInputFiles([
          renamedDrive('barred', 'barred.gpx', 'To the coast'),
          renamedDrive('clear', 'clear.gpx', 'Round the marsh'),
          ELSEWHERE,
          gpx('broken.gpx', '<gpx><trk>'),
        ]);
      await says(page, /3 drives added\..*broken\.gpx/);
      expect(await page.getByRole('grid').getAttribute('aria-rowcount')).toBe('4');
      await page
        .getByRole('gridcell', { name: /^Coach-built 7\.4 with rack: Barred; / })
        .first()
        .waitFor();
    },
  ],
  [
    'a drive’s own card',
    async (page) => {
      await page.setViewportSize({ width: 1280, height: 800 });
      const grid = page.getByRole('grid');
      await grid.locator('[data-place="0,0"]').focus();
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('End');
      expect(await focused(page)).toMatch(/: (Nothing mapped stops it|Take care|Unknown)/);
      await page.keyboard.press('Home');
      expect(await focused(page)).toContain('Round the marsh');
      await page.keyboard.press('Enter');
      await page.getByLabel('Name', { exact: true }).fill('Round the marsh, day 2');
      await page.keyboard.press('Enter');
      await grid.getByText('Round the marsh, day 2').waitFor({ timeout: SOON_MS });
    },
  ],
  [
    'what the vehicle of a column can take',
    async (page) => {
      await press(page, 'Close');
      await page.setViewportSize({ width: 1280, height: 800 });
      await press(page, 'Coach-built 7.4 with rack');
      await page.getByRole('grid').getByText('To the coast').waitFor({ state: 'detached' });
      await press(page, 'What stops most');
      await says(page, 'Nothing bars any of them.');
      await page.getByLabel('Near').fill('54.9, 8.1');
      await page.getByLabel('Near').press('Enter');
      await says(page, /^None of the 3 drives is like that/);
      await press(page, 'Anywhere');
      await page.getByRole('grid').getByText('Round the marsh').waitFor();
    },
  ],
  [
    'cells chosen to be handed over together',
    async (page) => {
      await page.setViewportSize({ width: 1280, height: 800 });
      await press(page, 'Coach-built 7.4 with rack');
      await press(page, 'Hand over several');
      for (const verdict of ['Barred', '(Nothing mapped stops it|Take care|Unknown)'])
        await page
          .getByRole('gridcell', { name: new RegExp(`^Coach-built 7\\.0: ${verdict}`) })
          .first()
          .getByRole('button')
          .click();
      await says(page, '2 chosen.');
    },
  ],
  [
    'several handed over, the barred one listed',
    async (page) => {
      await press(page, 'Hand over 2…');
      await says(page, 'Barred: not handed over');
      await says(page, 'Handed over, and kept in the library');
    },
  ],
];

it('the yard, from the first drives to a cell opened in Drive', { timeout: 240_000 }, async () => {
  const { page } = watched;
  await walkStates(watched, states, [390, 1280]);
  await press(page, 'Hand it over even so');
  const save = page.getByRole('button', { name: 'Save all 2' });
  await save.waitFor({ timeout: LONG_MS });
  const downloaded = page.waitForEvent('download', { timeout: LONG_MS });
  await save.click();
  const names = Object.keys(unzipSync(await readFile(await (await downloaded).path())));
  expect(names).toContain('To the coast, Coach-built 7.0/phone.html');
  expect(new Set(names.map((name) => name.split('/')[0])).size).toBe(2);
  await page.keyboard.press('Escape');
  // a cell's own button: by Tab from the cell, and where one points; drawn nowhere else
  const free = page.getByRole('gridcell', { name: /^Coach-built 7\.0: (Nothing|Take care|Unknown)/ }).first();
  await free.getByRole('button').first().focus();
  await page.keyboard.press('Tab');
  expect(await page.evaluate('document.activeElement.className')).toBe('yard-hand');
  await page.keyboard.press('Enter');
  await says(page, /^Sheet .*, kept in the library/);
  await page.keyboard.press('Escape');
  const pointed = page.getByRole('gridcell', { name: /^Coach-built 7\.0: Barred; / }).first();
  await pointed.hover();
  await pointed.getByRole('button', { name: /^Hand over with/ }).click();
  await says(page, 'Barred: not handed over');
  await page.keyboard.press('Escape');
  expect(await page.locator('.yard-hand').count()).toBeLessThanOrEqual(2);
  // the browser's print menu gives a sheet of all rows, the window away
  await page.evaluate("dispatchEvent(new Event('beforeprint'))");
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.yard-paper tbody tr').count()).toBe(3);
  expect(await page.locator('.yard-toolbar').isVisible()).toBe(false);
  await page.evaluate("dispatchEvent(new Event('afterprint'))");
  await page.emulateMedia({ media: 'screen' });
  const cell = page.getByRole('gridcell', { name: /^Coach-built 7\.0: Barred; / }).first();
  await cell.getByRole('button').first().click();
  await says(page, /^From your shelf: district/);
  expect(await tab(page, 'Drive').getAttribute('aria-selected')).toBe('true');
  expect(await page.locator('.vehicle-select option:checked').textContent()).toBe('Coach-built 7.0');
  await page.getByText('To the coast').first().waitFor();
  await tab(page, 'Yard').click();
  await startAgain(watched);
  await page.getByRole('grid').getByText('To the coast').waitFor({ timeout: LONG_MS });
  expect(await tab(page, 'Yard').getAttribute('aria-selected')).toBe('true');
  await tab(page, 'Drive').click();
  await says(page, 'To the coast');
});

/** What the page itself remembers is gone; what the program keeps is there. */
async function startAgain({ page, address }: WatchedPage): Promise<void> {
  // where the user left is kept once it has stood for a moment
  await page.waitForTimeout(1500);
  await page.evaluate("sessionStorage.removeItem('lanegauge.session')");
  await page.goto('about:blank');
  await page.goto(address, { waitUntil: 'load' });
}
