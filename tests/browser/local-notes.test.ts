import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { barredRow, LONG_MS, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';
import { type States, walkStates } from './support/walk-states.ts';

let watched: WatchedPage;

withSampleWindow((opened) => {
  watched = opened;
});

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
const closed = (page: Page) => page.getByRole('dialog').waitFor({ state: 'detached', timeout: SOON_MS });
const STATES: States = [
  [
    'a note being written from a finding',
    async (page) => {
      await barredRow(page, 'height').click();
      await press(page, 'I measured it…');
      await page.getByLabel('Height', { exact: true }).waitFor({ timeout: SOON_MS });
      // the keyboard stands in a field as soon as the dialog has one
      await page.locator('input:focus').fill('34');
      await press(page, 'Keep the note');
      await page.getByRole('alert').filter({ hasText: 'A height of 34.00 m cannot be right' }).waitFor();
    },
  ],
  [
    'a barred place that the firm measured',
    async (page) => {
      await page.getByLabel('Height', { exact: true }).fill('3.40');
      await page.getByLabel('Your initials').fill('AB');
      await page.keyboard.press('Enter');
      await closed(page);
      await page
        .locator('.detail-say', { hasText: 'The firm measured 3.40 m (11\'1")' })
        .waitFor({ timeout: SOON_MS });
      expect(await barredRow(page, 'height').textContent()).toContain('by the firm’s own note');
      for (const place of ['.map-note', '.strip-noted']) expect(await page.locator(place).count()).toBe(1);
    },
  ],
  [
    'the list of notes, ended and taken in',
    async (page) => {
      await barredRow(page, 'height').click();
      await press(page, 'Local notes…');
      await page.getByRole('list', { name: 'Notes', exact: true }).waitFor({ timeout: SOON_MS });
    },
  ],
];

it(
  'what the firm measured is told where it counts, from the row to the list',
  async () => {
    await walkStates(watched, STATES, [390, 1280]);
    const { page } = watched;
    const downloaded = page.waitForEvent('download');
    await press(page, 'Save for another firm');
    const text = await readFile(await (await downloaded).path(), 'utf8');
    expect(JSON.parse(text).features[0].properties).toMatchObject({ heightM: 3.4, by: 'AB' });
    await press(page, /^Change the note/);
    await press(page, 'Delete');
    await closed(page);
    await page.locator('.map-note').waitFor({ state: 'detached', timeout: SOON_MS });
  },
  LONG_MS,
);

it('a place of the map is noted, and stands on it and in the list', async () => {
  const { page } = watched;
  await press(page, 'Local notes…');
  await press(page, 'Note a place on the map');
  // on the middle of the map, which the whole drive lies about
  await press(page, 'Put it at the cross');
  await page.getByLabel('What whoever drives there should know').fill('Dog on the road');
  await press(page, 'Keep the note');
  await closed(page);
  await page.locator('.map-note').waitFor({ timeout: SOON_MS });
  await press(page, 'Local notes…');
  await page.getByText('Dog on the road').first().waitFor({ timeout: SOON_MS });
});
