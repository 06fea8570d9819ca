import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { LONG_MS, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';
import { type States, walkStates } from './support/walk-states.ts';

let watched: WatchedPage;

withSampleWindow((opened) => {
  watched = opened;
});

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
const told = (page: Page, text: string | RegExp) =>
  page.locator('.day').getByText(text).first().waitFor({ timeout: SOON_MS });

const STATES: States = [
  [
    'a day with a return hour and a stop',
    async (page) => {
      await page.getByLabel('Leave', { exact: true }).fill('2027-06-16T09:30');
      await press(page, /^Plan the day/);
      await press(page, 'That day at 17:00');
      await told(page, /^Set off by 16:\d\d at the latest/);
      await press(page, /^Add a stop at/);
      await told(page, /^leave by 1\d:\d\d at the latest/);
      await page.getByLabel('Name of stop').fill('The quay');
      await page.getByLabel('Name of stop').press('Enter');
      await told(page, /^Leave The quay by/);
    },
  ],
  [
    'places on the way',
    async (page) => {
      await page.getByLabel('Fuel', { exact: true }).check();
      await told(page, 'Fuel before the drive’s end: no stop is planned for it yet');
      await press(page, 'Find places on the way');
      await page.locator('.day-place').first().waitFor({ timeout: SOON_MS });
    },
  ],
  [
    'a place taken into the drive',
    async (page) => {
      await press(page, /^Stop there/);
      await told(page, /^Fuel before the drive’s end by 16:\d\d, at /);
      await page.locator('.changed-drive').waitFor();
    },
  ],
  [
    'and taken back',
    async (page) => {
      await page
        .locator('.changed-drive')
        .getByRole('button', { name: /Undo|back/i })
        .first()
        .click();
      await told(page, 'Fuel before the drive’s end: no stop is planned for it yet');
      expect(await page.locator('.day-stop').count()).toBe(1);
    },
  ],
];

it(
  'a day is planned on the sample drive, with fuel on the way, and the place taken back',
  async () => {
    await walkStates(watched, STATES, [390, 1024]);
  },
  LONG_MS,
);
