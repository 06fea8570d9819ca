import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { findChromium } from './find-chromium.ts';

/** The findings stand this long after the page was asked for, on a slow machine too. */
export const SOON_MS = 30_000;
/** A whole journey, on a machine that is busy with other tests. */
export const LONG_MS = 180_000;

export async function launch(): Promise<Browser> {
  return chromium.launch({
    executablePath: findChromium(),
    args: ['--no-sandbox', '--disable-gpu', '--in-process-gpu'],
  });
}

/** A page that remembers what it complained about. */
export interface WatchedPage {
  readonly page: Page;
  readonly address: string;
  /** console errors and warnings, uncaught errors, requests to elsewhere */
  readonly complaints: string[];
}

/** Opens the window in a page of its own. */
export async function openPage(context: BrowserContext, address: string): Promise<WatchedPage> {
  return openIn(await context.newPage(), address);
}

/**
 * Opens the window in a page as wide as a laptop's, by day. The page may have shown another before: each address is
 * another origin, so that nothing kept in the page is shared, and what it complained of before is not counted again.
 */
export async function openIn(page: Page, address: string): Promise<WatchedPage> {
  for (const event of ['console', 'pageerror', 'request']) page.removeAllListeners(event);
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.emulateMedia({ colorScheme: 'light', media: null, reducedMotion: null, forcedColors: null });
  const complaints: string[] = [];
  page.on('console', (told) => {
    if (told.type() === 'error' || told.type() === 'warning') complaints.push(told.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(new URL(address).origin) && !/^(data|blob):/.test(url))
      complaints.push(`asked for ${url}`);
  });
  // the watch call never ends, so that 'load' and not silence on the line says that the page is there
  await page.goto(address, { waitUntil: 'load' });
  return { page, address, complaints };
}

/** Waits for the check of a drive, as a screen reader is told of it. */
export async function findingsTold(page: Page, pattern: RegExp): Promise<void> {
  const told = page.getByTestId('announcer').filter({ hasText: pattern });
  await told.waitFor({ state: 'attached', timeout: SOON_MS });
}

/** What stands in the rows, one text each. */
export function rowsOf(page: Page): Promise<string[]> {
  return page.locator('.row-head').allInnerTexts();
}

/** The sample's check: three things bar it, whatever else is to be said. */
export const SAMPLE_TOLD = /^\d+ findings: 3 barred\b/;

/** The row of one of the sample's findings. */
export function barredRow(page: Page, subject: 'width' | 'height' | 'weight') {
  return page.locator('.row-head', { hasText: `Barred ${subject}` });
}
