import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { LONG_MS, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';
import { type States, walkStates } from './support/walk-states.ts';

let watched: WatchedPage;

withSampleWindow((opened) => {
  watched = opened;
});

const button = (page: Page, name: string) => page.getByRole('button', { name });
const sheet = (page: Page) => page.getByRole('region', { name: /^Drive sheet / });

const STATES: States = [
  [
    'a barred drive asks once more',
    async (page) => {
      await button(page, 'Hand over…').click();
      await button(page, 'Hand it over even so').waitFor({ timeout: SOON_MS });
    },
  ],
  [
    'a drive handed over',
    async (page) => {
      await button(page, 'Hand it over even so').click();
      await sheet(page).waitFor({ timeout: LONG_MS });
      await sheet(page).getByRole('heading', { name: 'Do not drive' }).waitFor({ timeout: SOON_MS });
    },
  ],
];

it(
  'a drive is handed over from Drive: the sheet opens with its verdict, is printed alone, and goes to the phone in one small archive',
  async () => {
    await walkStates(watched, STATES, [390, 1440]);
    const { page } = watched;
    const downloaded = page.waitForEvent('download');
    await button(page, 'Save for the phone').click();
    const bytes = await readFile(await (await downloaded).path());
    expect(bytes.length).toBeLessThan(2_000_000);
    const files = unzipSync(bytes);
    expect(Object.keys(files)).toEqual(
      expect.arrayContaining(['phone.html', 'drive.gpx', 'how-to-open.txt']),
    );
    expect(new TextDecoder().decode(files['phone.html'])).toContain('Do not drive');
    checkPdf(files['sheet.pdf'] ?? new Uint8Array());
    for (const width of [390, 320])
      expect(await requestsOf(page, files['phone.html']!, width)).toEqual(['/']);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.window > .views').isVisible()).toBe(false);
    expect(await sheet(page).isVisible()).toBe(true);
    await page.emulateMedia({ media: 'screen' });
    await page.getByRole('dialog').getByRole('button', { name: 'Close', exact: true }).click();
    await page.getByRole('tab', { name: 'Yard' }).click();
    await page.getByRole('button', { name: /^What is out/ }).click();
    await page.getByRole('button', { name: /^Show sheet / }).click();
    await sheet(page).waitFor({ timeout: SOON_MS });
  },
  2 * LONG_MS,
);

/** Every font has its outlines in the file; those of slanted letters (Type 3) are drawings themselves. */
function checkPdf(bytes: Uint8Array): void {
  const text = Buffer.from(bytes).toString('latin1');
  expect(text.slice(0, 5)).toBe('%PDF-');
  expect(text.trimEnd().endsWith('%%EOF')).toBe(true);
  const descriptors = [...text.matchAll(/<<[^<>]*\/Type \/FontDescriptor[^<>]*>>/g)].map(([found]) => found);
  const outlined = descriptors.filter((one) => /\/FontFile[23]? /.test(one));
  expect(outlined.length).toBeGreaterThan(1);
  expect(outlined.length).toBe(text.match(/\/Subtype \/CIDFontType[02]/g)?.length);
  expect(descriptors.join()).toContain('B612');
  expect(text.match(/\/Type \/Page\b(?!s)/g)?.length).toBeGreaterThan(2);
  // A4, in points
  expect(text).toMatch(/\/MediaBox \[0 0 59\d[.\d]* 84\d[.\d]*\]/);
}

/** What a server is asked for while the page is looked at, its links on the screen, and nothing scrolled sideways. */
async function requestsOf(near: Page, html: Uint8Array, width: number): Promise<string[]> {
  const asked: string[] = [];
  const server = createServer((request, response) => {
    asked.push(request.url ?? '');
    response.setHeader('content-type', 'text/html').end(html);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  const page = await near.context().newPage();
  try {
    await page.setViewportSize({ width, height: 800 });
    // every host that a link of the page could name leads to the same server
    await page.route('**', async (route) => {
      const { pathname } = new URL(route.request().url());
      await route.continue({ url: `http://127.0.0.1:${port}${pathname}` });
    });
    await page.goto(`http://127.0.0.1:${port}/`, { waitUntil: 'networkidle' });
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
  } finally {
    await page.close();
    server.closeAllConnections();
    server.close();
  }
  return asked;
}
