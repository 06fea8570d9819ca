import { describe, it } from 'vitest';
import { HOSTILE_NAME, loadList } from './support/files.ts';
import { findingsTold, SAMPLE_TOLD, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';
import { type States, walkStates } from './support/walk-states.ts';

let watched: WatchedPage;

withSampleWindow((opened) => {
  watched = opened;
});

const STATES: States = [
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

describe('every state of the load', () => {
  it('is free of faults at three widths, by day and by night', { timeout: 240_000 }, () =>
    walkStates(watched, STATES),
  );
});
