import { readFileSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { dropFiles } from './support/drop.ts';
import { gpx, loadList, type NamedBytes, renamedDrive, sampleDrive } from './support/files.ts';
import { LONG_MS, SOON_MS } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';

let page: Page;

withSampleWindow(
  (watched) => {
    page = watched.page;
  },
  { quiet: true },
);

const CARD = ofFile('sample-routes/vehicles/panel-van-6.0.json', 'application/json');
const LIST = loadList('weekend.json', [{ name: 'Awning', massKg: 45, xM: 5 }]);
const DRIVE = gpx('monday.gpx', readFileSync(sampleDrive('clear'), 'utf8'));
const OTHER_DRIVE = renamedDrive('barred', 'tuesday.gpx', 'Tuesday');
const PDF: NamedBytes = { name: 'way.pdf', mimeType: 'application/pdf', buffer: Buffer.from('%PDF-1.7') };
const EMPTY: NamedBytes = { name: 'nothing.gpx', mimeType: '', buffer: Buffer.alloc(0) };

function ofFile(path: string, mimeType: string): NamedBytes {
  return { name: basename(path), mimeType, buffer: readFileSync(resolve(path)) };
}

const button = (name: string) => page.getByRole('button', { name, exact: true });
const notice = () => page.locator('.notice p');
const fleet = () => page.getByRole('list', { name: 'Fleet' }).getByRole('button');
const awningAboard = () => page.getByRole('slider', { name: /^Awning/ }).waitFor({ timeout: SOON_MS });
const said = (text: string | RegExp) => notice().filter({ hasText: text }).waitFor({ timeout: SOON_MS });

describe('files dropped on the window', { timeout: LONG_MS }, () => {
  it('are offered to the fleet where one is a vehicle card, and the fleet stays as it is until then', async () => {
    await dropFiles(page, [CARD]);
    await said('panel-van-6.0.json is a vehicle card.');
    const before = await page.locator('#vehicle-select option').count();
    await button('Add it to the fleet').click();
    await page.getByText('panel-van-6.0.json is in the fleet.').waitFor({ timeout: SOON_MS });
    expect(await fleet().count()).toBe(before + 1);
  });

  it('go aboard where one is a load list, and one step takes it off again', async () => {
    await dropFiles(page, [LIST]);
    await awningAboard();
    await button('Undo').click();
    expect(await page.getByRole('slider', { name: /^Awning/ }).count()).toBe(0);
  });

  it('are all taken or offered where a drive, a card and a load list come together', async () => {
    await dropFiles(page, [LIST, DRIVE, CARD]);
    await said('weekend.json is a load list. panel-van-6.0.json is a vehicle card.');
    await page.getByText('monday.gpx').first().waitFor({ timeout: SOON_MS });
    await button('Add panel-van-6.0.json to the fleet').click();
    await page.getByText('panel-van-6.0.json is in the fleet.').waitFor({ timeout: SOON_MS });
    await button('Close').click();
    await button('Put it aboard').click();
    await awningAboard();
    expect(await notice().count()).toBe(0);
  });

  it('let one be chosen where several are drives, and what else came is still offered', async () => {
    await dropFiles(page, [DRIVE, OTHER_DRIVE, LIST]);
    const which = page.getByRole('dialog', { name: 'Which drive?' });
    await which.getByRole('button', { name: 'tuesday.gpx' }).click();
    await page.getByText('Tuesday').first().waitFor({ timeout: SOON_MS });
    await said('weekend.json is a load list.');
  });

  it('are offered where they can be pressed, in a narrow window and another view too', async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    await dropFiles(page, [LIST, CARD]);
    await page.getByRole('tab', { name: 'Load', exact: true }).click();
    await button('Put weekend.json aboard').click();
    await awningAboard();
    expect(await page.locator('.notice:visible').count()).toBe(1);
  });

  it('are told apart where they cannot be opened, each in a sentence, beside the drive that can', async () => {
    await dropFiles(page, [PDF, DRIVE, EMPTY]);
    await said(/way\.pdf is a PDF\..*nothing\.gpx is empty\./);
    await page.getByText('monday.gpx').first().waitFor({ timeout: SOON_MS });
  });
});
