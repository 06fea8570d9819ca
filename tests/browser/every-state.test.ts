import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFaults, sidewaysPx } from './support/axe.ts';
import { ELSEWHERE, HOSTILE_NAME, loadList, renamedDrive } from './support/files.ts';
import { barredRow, findingsTold, openPage, SAMPLE_TOLD, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';

let watched: WatchedPage;

withSampleWindow((opened) => {
  watched = opened;
});

/** The states of the journeys, each from the one before. */
type States = readonly (readonly [string, (page: Page) => Promise<unknown>])[];
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
      await page.getByText('The open map has no roads under this drive').waitFor({ timeout: SOON_MS });
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

/** The same of the swing lessons. */
const SWING_STATES: States = [
  ['the sample drive', (page) => findingsTold(page, SAMPLE_TOLD)],
  [
    'a turn opened',
    (page) =>
      page
        .locator('.row-head', { hasText: /(Take care|Tight) turn/ })
        .first()
        .click(),
  ],
  ['that turn in the swing view', (page) => page.getByRole('button', { name: 'See this turn' }).click()],
  ['pulling away', (page) => page.getByRole('button', { name: 'Pulling away', exact: true }).click()],
  ['beside another vehicle', (page) => page.getByLabel('Compare with').selectOption({ index: 1 })],
  ['a mini-roundabout', (page) => page.getByRole('button', { name: 'Mini-roundabout' }).click()],
  ['steered by hand', (page) => page.getByRole('button', { name: 'Steer by hand' }).click()],
];

/** The same of the load. */
const LOAD_STATES: States = [
  ['the sample drive', (page) => findingsTold(page, SAMPLE_TOLD)],
  ['nothing aboard', (page) => page.getByRole('tab', { name: 'Load' }).click()],
  ['over a plate', (page) => page.getByRole('button', { name: 'Show the sample load' }).click()],
  [
    'an item in the keyboard’s hand',
    async (page) => {
      await page.getByRole('slider', { name: 'Garage' }).focus();
      await page.keyboard.press('ArrowLeft');
    },
  ],
  ['asked about, and too much', (page) => page.getByLabel('Can we take').selectOption('e-bike')],
  [
    'a figure that is none',
    async (page) => {
      await page.getByRole('button', { name: 'No, leave it' }).click();
      await page.getByLabel('Kilograms of Clothes and bedding').fill('heavy');
    },
  ],
  [
    'within, after the fix',
    async (page) => {
      await page.getByLabel('Kilograms of Clothes and bedding').fill('56');
      await page
        .getByRole('button', { name: /^Do this/ })
        .first()
        .click();
    },
  ],
  [
    'forty items of long and hostile names',
    (page) =>
      page.getByLabel('Load list to open').setInputFiles(
        loadList(
          'forty.json',
          Array.from({ length: 40 }, (_, i) => ({
            name: i % 4 === 0 ? HOSTILE_NAME.slice(0, 190) + i : `Thing ${i}`,
            massKg: 1 + ((i * 7) % 20),
            xM: i / 6 - 0.4,
          })),
        ),
      ),
  ],
  [
    'the drive with a load over its plate',
    async (page) => {
      await page.getByRole('button', { name: 'Undo', exact: true }).click();
      await page.getByRole('button', { name: 'Undo', exact: true }).click();
      await page.getByRole('tab', { name: 'Drive' }).click();
      await page.getByText('Loaded as listed it must not leave').waitFor({ timeout: SOON_MS });
    },
  ],
];

async function swap(page: Page, name: string): Promise<void> {
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name, exact: true }).click();
}

const WIDTHS = [820, 1280, 1920];
const PALETTES = ['light', 'dark'] as const;

describe('every state of the journeys', () => {
  it.each([
    ['on the drive', STATES],
    ['in the swing lessons', SWING_STATES],
    ['in the load', LOAD_STATES],
  ])(
    'is free of faults at three widths, by day and by night: %s',
    { timeout: 240_000 },
    async (_, states) => {
      const { page, complaints } = watched;
      const faults: string[] = [];
      let looked = 0;
      for (const [name, reach] of states) {
        await reach(page);
        for (const width of WIDTHS)
          for (const colorScheme of PALETTES) {
            await page.setViewportSize({ width, height: width === 1920 ? 1080 : 800 });
            await page.emulateMedia({ colorScheme });
            await page.evaluate(
              'new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)))',
            );
            const where = `${name}, ${width}, ${colorScheme}`;
            for (const fault of await axeFaults(page)) faults.push(`${where}: ${fault}`);
            const sideways = await sidewaysPx(page);
            if (sideways > 0) faults.push(`${where}: ${sideways} px too wide`);
            looked++;
          }
      }
      expect(faults).toEqual([]);
      expect(complaints).toEqual([]);
      expect(looked).toBe(states.length * WIDTHS.length * PALETTES.length);
    },
  );
});

describe('the shell', { timeout: 90_000 }, () => {
  it('does not move while a check runs or long work comes and goes', async () => {
    const { page } = watched;
    await page.evaluate(`window.shifted = 0; new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) if (entry.hadRecentInput) continue; window.shifted += entry.value; (window.shifts ??= []).push(entry.value + ' ' + entry.sources.map(({ node }) => node?.className).join());
    }).observe({ type: 'layout-shift', buffered: true })`);
    await page.getByLabel('Leave').fill('2027-06-12T09:30');
    await page.getByText('there at').waitFor({ timeout: SOON_MS });
    expect(
      Number(await page.evaluate('window.shifted')),
      String(await page.evaluate('window.shifts')),
    ).toBeLessThan(0.02);
  });

  it('answers a window whose address is spent with a sentence', async () => {
    const second = await openPage(watched.page.context(), watched.address);
    await second.page.getByRole('alert').filter({ hasText: 'This address has been used' }).waitFor();
    expect(await axeFaults(second.page)).toEqual([]);
    await second.page.close();
  });
});
