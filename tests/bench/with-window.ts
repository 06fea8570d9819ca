import { chromium, type Page } from 'playwright-core';
import type { Dispatch } from '../../main/dispatch.ts';
import { type BehindWindow, serveWindowHere, windowParts } from '../support/served-window.ts';

export const CHROMIUM = process.env['CHROMIUM'] ?? '/usr/bin/chromium';

/**
 * Serves the built window from this process, opens it in a real browser, lets `act` use the page, and clears up.
 * @param answering how the program answers, where not as it does by itself
 */
export async function withWindow(
  viewport: { readonly width: number; readonly height: number },
  act: (page: Page) => Promise<void>,
  answering?: (behind: BehindWindow) => Promise<Dispatch>,
): Promise<void> {
  const parts = await windowParts();
  const served = await serveWindowHere(parts, answering);
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox'] });
  try {
    const page = await browser.newPage({ viewport });
    page.on('pageerror', (error) => console.error(error));
    await page.goto(served.address);
    await act(page);
  } finally {
    await browser.close();
    await served.close();
    await parts.engine.close();
  }
}
