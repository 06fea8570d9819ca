import { rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  ELSEWHERE,
  gpx,
  HOSTILE_NAME,
  LOW_ROAD,
  longMap,
  renamedDrive,
  sampleDrive,
} from './support/files.ts';
import { barredRow, findingsTold, LONG_MS, SAMPLE_TOLD, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';

let watched: WatchedPage;
let page: Page;

const { spend } = withSampleWindow(
  (opened) => {
    watched = opened;
    page = opened.page;
  },
  { again: asAtFirst },
);

/** The sample drive with its first vehicle, nothing filtered away and nothing opened. */
async function asAtFirst(): Promise<void> {
  await page.keyboard.press('Escape');
  await page.getByLabel('Subject').selectOption({ index: 0 });
  await page.locator('.rows-place').evaluate((box) => box.scrollTo(0, 0));
}

async function choose(files: Parameters<ReturnType<Page['locator']>['setInputFiles']>[0]) {
  await page.getByRole('button', { name: 'Open…', exact: true }).click();
  await page.locator('dialog input[type=file]').setInputFiles(files);
}

describe('the window', { timeout: LONG_MS }, () => {
  it('opens a finding by keyboard, tells its sum, and gives the focus back', async () => {
    const rows = page.locator('.row-head');
    const height = barredRow(page, 'height');
    await barredRow(page, 'width').focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    expect(await height.getAttribute('aria-expanded')).toBe('true');
    expect(await page.locator('.sum').textContent()).toContain('limit 2.89 m − vehicle 3.10 m = −0.21 m');
    expect(await page.locator('.detail').textContent()).toContain('maxheight=9\'6"');
    await page.getByRole('button', { name: /^Before: barred, width/ }).click();
    await page.waitForFunction("document.activeElement?.textContent?.includes('Barred width')");
    expect(await height.getAttribute('aria-expanded')).toBe('false');
    await page.keyboard.press('Escape');
    expect(await page.locator('.detail').count()).toBe(0);
    expect(await page.evaluate('document.activeElement.textContent')).toContain('Barred width');
    await page.keyboard.press('End');
    const last = await rows.last().getAttribute('data-finding');
    expect(await page.evaluate('document.activeElement.dataset.finding')).toBe(last);
  });

  it('filters by level and subject, and says what it hides', async () => {
    for (const toggle of await page.locator('.level-toggle').all()) await toggle.click();
    await findingsTold(page, / 0 in the list/);
    await page.getByText(/The filter hides all \d+ findings/).waitFor();
    await page.getByRole('button', { name: 'Show all' }).click();
    await page.getByLabel('Subject').selectOption('height');
    await findingsTold(page, / 1 in the list/);
  });

  it('shows what is chosen, and each level apart, under colours that the system sets', async () => {
    await page.emulateMedia({ forcedColors: 'active' });
    const edge = () =>
      page.evaluate("getComputedStyle(document.querySelector('.level-toggle')).borderTopWidth");
    expect(await edge()).toBe('3px');
    await page.locator('.level-toggle').first().click();
    expect(await edge()).not.toBe('3px');
    await page.locator('.level-toggle').first().click();
    const told = await page.evaluate(
      "[...document.querySelectorAll('.row-head .level-mark path')].map((mark) => getComputedStyle(mark).stroke)",
    );
    expect(new Set(told as string[]).size).toBeGreaterThan(2);
  });

  it('checks again at once for another vehicle and another time, without reading the drive again', async () => {
    const calls: string[] = [];
    page.on('request', (request) => calls.push(new URL(request.url()).pathname));
    await page.getByLabel('Vehicle', { exact: true }).selectOption({ label: 'Coach-built 7.0' });
    await page.locator('.verdict', { hasText: 'Coach-built 7.0' }).waitFor({ timeout: SOON_MS });
    await page.getByLabel('Leave', { exact: true }).fill('2027-06-12T09:30');
    await page.getByText(/there at (09|10):\d\d/).waitFor({ timeout: SOON_MS });
    expect(await page.locator('#leave-says').textContent()).toBe('Saturday');
    expect(calls).toContain('/call/check');
    expect(calls).not.toContain('/call/openDrive');
  });

  it('has a slider of leave times that tells the verdict at each, and says when no time is set', async () => {
    await page.getByLabel('Leave', { exact: true }).fill('');
    await page.getByText('No leave time: hours not judged').waitFor({ timeout: SOON_MS });
    expect(await page.getByRole('slider', { name: /^Leave/ }).count()).toBe(0);
    await page.getByLabel('Leave', { exact: true }).fill('2027-06-12T09:30');
    const slider = page.getByRole('slider', { name: /^Leave 09:30, Saturday 12 June(?: 2027)?: barred/ });
    await slider.waitFor({ timeout: SOON_MS });
    expect(await slider.getAttribute('aria-valuetext')).toBe('09:30, barred');
    await slider.focus();
    await page.keyboard.press('ArrowRight');
    expect(await page.getByLabel('Leave', { exact: true }).inputValue()).toBe('2027-06-12T09:35');
    await page.locator('.leave-slider', { hasText: 'Leave 09:35' }).waitFor({ timeout: SOON_MS });
    spend();
  });

  it('opens a drive from a file', async () => {
    await choose(sampleDrive('clear'));
    await page.locator('.drive-name', { hasText: 'clear.gpx' }).waitFor({ timeout: SOON_MS });
    await findingsTold(page, /^\d+ findings?.*in the list/);
    expect(await page.title()).toContain('Lanegauge');
    await page.getByRole('button', { name: 'Open…', exact: true }).click();
    await page.getByRole('dialog').getByText('Opened before').waitFor();
    spend();
  });

  it('takes a dropped file that is no drive with one sentence, and keeps what was open', async () => {
    const transfer = await page.evaluateHandle(
      "(() => { const held = new DataTransfer(); held.items.add(new File(['<gpx><trk>'], 'torn.gpx')); return held; })()",
    );
    await page.dispatchEvent('body', 'dragover', { dataTransfer: transfer });
    expect(await page.getByText('Drop to open').isVisible()).toBe(true);
    await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
    const alert = page.getByRole('alert').filter({ hasText: 'torn.gpx' });
    await alert.waitFor({ timeout: SOON_MS });
    expect(await barredRow(page, 'height').count()).toBe(1);
    expect(await page.locator('.drive-name').textContent()).toContain('barred.gpx');
    await page.getByRole('button', { name: 'Close this message' }).click();
    expect(await alert.count()).toBe(0);
  });

  it('says so when the open map has no roads under a drive, and offers to open one', async () => {
    await choose(ELSEWHERE);
    await page.getByText('The map has no roads under this drive').waitFor({ timeout: SOON_MS });
    await findingsTold(page, /unknown/);
    await page.getByRole('button', { name: 'Open a map file…' }).click();
    await page.getByRole('dialog').waitFor();
    spend();
  });

  it('stops a long reading when asked, and keeps what was open', async () => {
    const path = await longMap(60);
    await choose(path);
    await page.getByText('Reading the map').first().waitFor({ timeout: SOON_MS });
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByText('Cancelled. What was open is still open.').waitFor({ timeout: SOON_MS });
    expect(await barredRow(page, 'height').count()).toBe(1);
    await page.getByLabel('Leave', { exact: true }).fill('2027-06-12T09:30');
    await page.getByText('there at').waitFor({ timeout: SOON_MS });
    await rm(dirname(path), { recursive: true });
  });

  it('opens a map and a drive together, and links what it found to the map object', async () => {
    await choose([...LOW_ROAD]);
    await page.locator('.status-line', { hasText: 'low.osm' }).waitFor({ timeout: SOON_MS });
    const row = page.locator('.row-head', { hasText: 'Low Road' }).first();
    await row.click({ timeout: SOON_MS });
    expect(await row.textContent()).toContain('Barred');
    const link = page.getByRole('link', { name: 'way 77 on openstreetmap.org' });
    expect(await link.getAttribute('href')).toBe('https://www.openstreetmap.org/way/77');
    expect(await link.getAttribute('rel')).toContain('noopener');
    expect(watched.complaints).toEqual([]);
    spend();
  });

  it('shows hostile names as plain text', async () => {
    await choose(renamedDrive('barred', '<b>x.gpx', HOSTILE_NAME));
    await page.locator('.drive-name', { hasText: '<img src=x' }).waitFor({ timeout: SOON_MS });
    await findingsTold(page, SAMPLE_TOLD);
    expect(await page.locator('img[src=x]').count()).toBe(0);
    expect((await page.locator('.drive-name').textContent())?.length).toBeLessThan(300);
    expect(watched.complaints).toEqual([]);
  });

  it('chooses among several tracks of one file', async () => {
    const leg = (name: string, lat: number) =>
      `<trk><name>${name}</name><trkseg><trkpt lat="${lat}" lon="7"/><trkpt lat="${lat + 0.01}" lon="7"/></trkseg></trk>`;
    const two = `<gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1">${leg('Out', 51)}${leg('Back', 52)}</gpx>`;
    await choose(gpx('two.gpx', two));
    const tracks = page.getByLabel('Which track or route of two.gpx');
    await tracks.selectOption('2', { timeout: SOON_MS });
    await page.locator('.drive-name b', { hasText: 'Back' }).waitFor({ timeout: SOON_MS });
    spend();
  });

  it('keeps the session over a reload', async () => {
    await choose(renamedDrive('barred', 'mine.gpx', 'My own drive'));
    await page.locator('.drive-name', { hasText: 'My own drive' }).waitFor({ timeout: SOON_MS });
    await findingsTold(page, SAMPLE_TOLD);
    await page.getByLabel('Leave', { exact: true }).fill('2027-06-12T09:30');
    await page.getByText('there at').waitFor({ timeout: SOON_MS });
    await barredRow(page, 'height').click();
    await page.reload();
    await findingsTold(page, SAMPLE_TOLD);
    expect(await page.locator('.drive-name').textContent()).toContain('My own drive');
    expect(await page.getByLabel('Leave', { exact: true }).inputValue()).toBe('2027-06-12T09:30');
    expect(await barredRow(page, 'height').getAttribute('aria-expanded')).toBe('true');
    spend();
  });
});

describe('settings', { timeout: LONG_MS }, () => {
  it('hold at once: units, palette and margins', async () => {
    await page.getByRole('button', { name: 'Settings' }).click();
    await page.getByLabel('miles, feet and inches').check();
    await page.getByLabel('night').check();
    await page.keyboard.press('Escape');
    expect(await barredRow(page, 'height').textContent()).toMatch(/2\.0 mi/);
    expect(await page.locator('html').getAttribute('data-palette')).toBe('night');
    expect(await page.evaluate('document.activeElement.textContent')).toBe('Settings');
  });
});
