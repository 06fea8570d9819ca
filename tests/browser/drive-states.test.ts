import type { Page } from 'playwright-core';
import { describe, it } from 'vitest';
import { ELSEWHERE, HOSTILE_NAME, renamedDrive } from './support/files.ts';
import { barredRow, findingsTold, SAMPLE_TOLD, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';
import { type States, walkStates } from './support/walk-states.ts';

let watched: WatchedPage;

withSampleWindow((opened) => {
  watched = opened;
});

const STATES: States = [
  ['the sample drive', (page) => findingsTold(page, SAMPLE_TOLD)],
  ['a height opened', (page) => barredRow(page, 'height').click()],
  ['a width opened', (page) => barredRow(page, 'width').click()],
  ['a weight opened', (page) => barredRow(page, 'weight').click()],
  [
    'everything filtered away',
    async (page) => {
      for (const toggle of await page.locator('.level-toggle').all()) await toggle.click();
    },
  ],
  ['shown again', (page) => page.getByRole('button', { name: 'Show all' }).click()],
  ['the help', (page) => page.getByRole('button', { name: 'Help' }).click()],
  ['the settings', (page) => swap(page, 'Settings')],
  ['the vehicle cards', (page) => swap(page, 'Cards…')],
  ['the files', (page) => swap(page, 'Open…')],
  [
    'a drive elsewhere, under a hostile name before',
    async (page) => {
      await page
        .locator('dialog input[type=file]')
        .setInputFiles(renamedDrive('barred', 'x.gpx', HOSTILE_NAME));
      await page.locator('.drive-name', { hasText: '<img' }).waitFor({ timeout: SOON_MS });
      await page.getByRole('button', { name: 'Open…', exact: true }).click();
      await page.locator('dialog input[type=file]').setInputFiles(ELSEWHERE);
      await page.getByText('The map has no roads under this drive').waitFor({ timeout: SOON_MS });
    },
  ],
  [
    'a file refused',
    async (page) => {
      await page.getByRole('button', { name: 'Open…', exact: true }).click();
      await page
        .locator('dialog input[type=file]')
        .setInputFiles({ name: 'torn.gpx', mimeType: 'text/xml', buffer: Buffer.from('<gpx>') });
      await page.getByRole('alert').filter({ hasText: 'torn.gpx' }).waitFor({ timeout: SOON_MS });
    },
  ],
];

/** What a narrow window shows otherwise than a wide one. */
const NARROW_STATES: States = [
  ['the findings by themselves', (page) => part(page, 'Findings')],
  ['a width opened', (page) => barredRow(page, 'width').click()],
  ['the strip by itself, and the opened row', (page) => part(page, 'Strip')],
  ['the map by itself, and the opened row', (page) => part(page, 'Map')],
  ['the help', (page) => page.getByRole('button', { name: 'Help' }).click()],
];

async function part(page: Page, name: string): Promise<void> {
  await page.setViewportSize({ width: 390, height: 800 });
  await page.getByRole('button', { name, exact: true }).click();
}

async function swap(page: Page, name: string): Promise<void> {
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name, exact: true }).click();
}

describe('every state on the drive', () => {
  it('is free of faults at three widths, by day and by night', { timeout: 240_000 }, () =>
    walkStates(watched, STATES),
  );

  it('is free of faults on a narrow window, part by part', { timeout: 120_000 }, () =>
    walkStates(watched, NARROW_STATES, [390]),
  );
});
