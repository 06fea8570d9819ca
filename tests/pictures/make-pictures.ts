import { mkdir } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { renamedDrive } from '../browser/support/files.ts';
import { findingsTold, launch, openPage, SAMPLE_TOLD } from '../browser/support/page.ts';
import { serveWindowHere, windowParts } from '../support/served-window.ts';

/** Draws the pictures of the README from the sample, as the window shows it: npm run pictures. */

const FOLDER = resolve('sample-routes/pictures');
const SIZE = { width: 1280, height: 860 };

/** What the library of the picture holds, as drives of the invented district. */
const DRIVES = [
  renamedDrive('barred', 'short.gpx', 'Saltpan Yard to Thrushcombe, the short way'),
  renamedDrive('clear', 'clear.gpx', 'Thrushcombe by the trunk road'),
  renamedDrive('everything', 'round.gpx', 'All round the district'),
];

const tab = (page: Page, name: string) => page.getByRole('tab', { name, exact: true }).click();

async function still(page: Page): Promise<void> {
  await page.mouse.move(0, 0);
  await page.waitForTimeout(1500);
}

async function write(page: Page, name: string): Promise<void> {
  await still(page);
  const picture = await page.screenshot();
  await sharp(picture)
    .png({ palette: true, effort: 10 })
    .toFile(resolve(FOLDER, `${name}.png`));
  console.log(`sample-routes/pictures/${name}.png`);
}

async function drawSwing(page: Page): Promise<void> {
  await tab(page, 'Swing');
  // where the tail is farthest out
  await page.getByLabel('Rolled so far').fill('2.4');
  await write(page, 'swing');
}

async function drawYard(page: Page): Promise<void> {
  await tab(page, 'Yard');
  await page.getByRole('button', { name: 'Shelf' }).first().click();
  await page
    .locator('dialog input[type=file]')
    .first()
    .setInputFiles(resolve('sample-routes/district.osm.pbf'));
  await page
    .getByText(/^district is on your shelf/)
    .first()
    .waitFor();
  await page.keyboard.press('Escape');
  await page.getByLabel('Drives for the yard').setInputFiles(DRIVES);
  await page.getByText(`${DRIVES.length} drives added`).first().waitFor();
  await page.getByText('Checked', { exact: false }).first().waitFor();
  await write(page, 'yard');
}

await mkdir(FOLDER, { recursive: true });
const parts = await windowParts();
const served = await serveWindowHere(parts);
const browser = await launch();
try {
  const context = await browser.newContext({ deviceScaleFactor: 1.5 });
  const { page } = await openPage(context, served.address);
  await page.setViewportSize(SIZE);
  await findingsTold(page, SAMPLE_TOLD);
  await write(page, 'drive');
  await drawSwing(page);
  await drawYard(page);
} finally {
  await browser.close();
  await served.close();
  await parts.engine.close();
}
