import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { readGpx } from '../../geo/drive/gpx/read-gpx.ts';
import { axeFaults } from './support/axe.ts';
import { barredRow, findingsTold, LONG_MS, SAMPLE_TOLD, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';
import { type States, walkStates } from './support/walk-states.ts';

let watched: WatchedPage;

withSampleWindow((opened) => {
  watched = opened;
});

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
const waysTold = (page: Page, pattern: RegExp) =>
  page
    .getByTestId('ways-announcer')
    .filter({ hasText: pattern })
    .waitFor({ state: 'attached', timeout: SOON_MS });
const verdict = (page: Page, word: string) =>
  page.getByRole('heading', { name: word, level: 2 }).waitFor({ timeout: SOON_MS });

const STATES: States = [
  [
    'ways past one finding, from its row',
    async (page) => {
      await press(page, /^Way round ?: Barred height/);
      await waysTold(page, /past .*Station Road/);
      expect(await barredRow(page, 'height').getAttribute('aria-expanded')).toBe('true');
      // on the map, beside the ribbon and in the list by the same number: the one that came to lie under the pointer
      const raised = await page.locator('.way-list .way-raised').first().getAttribute('data-way');
      expect(await page.locator('.way-tag-raised').first().getAttribute('data-way')).toBe(raised);
      await page.locator(`.strip-map [data-way="${raised}"]`).waitFor({ state: 'attached' });
    },
  ],
  [
    'ways past all that bars the drive',
    async (page) => {
      await press(page, 'Ways past all of it');
      await waysTold(page, /^(\d+ ways|One way) past /);
      await page.locator('.way-list').first().waitFor();
    },
  ],
  [
    'a drive changed by ways',
    async (page) => {
      await press(page, /^Take (it|ways)/);
      await verdict(page, 'Nothing mapped stops it');
      await findingsTold(page, /^\d+ findings?(?!.*barred)/);
      await page.locator('.changed-drive:focus').waitFor();
    },
  ],
];

it(
  'the sample drive, barred three ways, becomes one that nothing mapped stops',
  async () => {
    await walkStates(watched, STATES, [390, 1280]);
    const { page } = watched;
    const downloaded = page.waitForEvent('download');
    await press(page, 'Save as GPX');
    const file = await downloaded;
    expect(file.suggestedFilename()).toMatch(/\.gpx$/);
    const read = readGpx(await readFile(await file.path(), 'utf8'));
    expect(read.ok && read.value.routes[0]?.segments[0]?.lat.length).toBeGreaterThan(50);
    await page.keyboard.press('Control+z');
    await findingsTold(page, SAMPLE_TOLD);
    await verdict(page, 'Barred');
    await page.keyboard.press('Control+Shift+Z');
    await verdict(page, 'Nothing mapped stops it');
    // a reload has the changed drive still, and that it is in no file of the user's
    await page.reload();
    await verdict(page, 'Nothing mapped stops it');
    await page.getByRole('button', { name: 'Save as GPX' }).waitFor({ timeout: SOON_MS });
  },
  LONG_MS,
);

it('the keyboard alone finds a way and takes it', async () => {
  const { page } = watched;
  await page.getByRole('button', { name: 'Ways past all of it' }).focus();
  await page.keyboard.press('Enter');
  await waysTold(page, /past /);
  // hidden, the keyboard is at the button again
  await page.getByRole('button', { name: 'Hide the ways' }).focus();
  await page.keyboard.press('Enter');
  await page.locator('.ways-past button:focus', { hasText: 'Ways past all of it' }).waitFor();
  await page.keyboard.press('Enter');
  await page.locator('.way-list').first().waitFor();
  await page.locator('.ways-answer:focus').waitFor();
  await page.keyboard.press('Tab');
  expect(await page.locator('.way-list .way-raised').first().getAttribute('data-way')).toBe('1');
  await page.keyboard.press('Enter');
  await verdict(page, 'Nothing mapped stops it');
  await page.locator('.changed-drive:focus').waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await findingsTold(page, SAMPLE_TOLD);
});

it('a drive is planned by the keyboard: by name and by coordinates, moved, taken back', async () => {
  const { page, complaints } = watched;
  await press(page, 'Plan');
  const field = page.getByRole('combobox', { name: /^A place by name/ });
  // of several none of which is called just so none is taken by itself
  await field.fill('Castle');
  await field.press('Enter');
  await page.getByText(/^None is called just so\./).waitFor();
  await field.press('Enter');
  expect(await page.locator('[data-place]').count()).toBe(0);
  await field.fill('Saltgarth');
  await page
    .getByRole('option', { name: /^Saltgarth/ })
    .first()
    .waitFor();
  await field.press('Enter');
  await field.fill('-20.0, 47.51');
  await page.getByText(/lies off the open map, but .* lies on it/).waitFor();
  await field.fill('47.51, -20.0');
  await field.press('Enter');
  await findingsTold(page, /^\d+ finding/);
  const list = page.getByRole('list', { name: /^Places, in the order/ });
  expect(await list.getByRole('listitem').count()).toBe(2);
  await list.locator('[data-place]').first().focus();
  await page.keyboard.press('Alt+ArrowDown');
  await list.locator('li:last-child', { hasText: 'Saltgarth' }).waitFor();
  await page.keyboard.press('Control+z');
  await list.locator('li:first-child', { hasText: 'Saltgarth' }).waitFor();
  expect(await axeFaults(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await page.locator('.placing').waitFor({ state: 'detached' });
  await press(page, /^Done/);
  await page.getByText('This drive was made here and is in no file of yours.').waitFor();
  // its places are still there, with the steps back
  await press(page, 'Change its places');
  await list.getByRole('listitem').nth(1).waitFor();
  expect(await list.getByRole('listitem').count()).toBe(2);
  expect(await page.locator('.plan-acts').getByRole('button', { name: 'Undo' }).isEnabled()).toBe(true);
  await press(page, /^Done/);
  expect(complaints).toEqual([]);
});
