import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { sidewaysPx } from './support/axe.ts';
import { barredRow, LONG_MS, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';

let watched: WatchedPage;

const { spend } = withSampleWindow(
  (opened) => {
    watched = opened;
  },
  { again: ({ page }) => page.setViewportSize({ width: 1280, height: 800 }) },
);

/** Windows as they are, and two of them with the page zoomed to 200 %. */
const WINDOWS = [
  [390, 844],
  [820, 1180],
  [900, 900],
  [1024, 768],
  [1366, 768],
  [1920, 1080],
  [683, 384],
  [960, 540],
] as const;

const PARTS = [
  '.bar',
  '.parts',
  '.map-place',
  '.verdict',
  '.filters',
  '.strip-place',
  '.rows-place',
  '.status-line',
];

/** Parts that lie over each other, the line at the foot left out where it stays in sight over what scrolls. */
async function overlaps(page: Page, footStays: boolean): Promise<string[]> {
  const boxes = await Promise.all(
    PARTS.filter((part) => !(footStays && part === '.status-line')).map(async (part) => {
      const shown = page.locator(part).first();
      return { part, box: (await shown.isVisible()) ? await shown.boundingBox() : null };
    }),
  );
  return boxes.flatMap(({ part, box: a }, i) =>
    boxes.slice(i + 1).flatMap(({ part: other, box: b }) => {
      if (!a || !b) return [];
      const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
      const down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
      return across > 1 && down > 1 ? [`${part} over ${other} by ${across} × ${down}`] : [];
    }),
  );
}

describe('the drive in a window of any size', { timeout: LONG_MS }, () => {
  it('has no part over another, and nothing wider than the window', async () => {
    const { page } = watched;
    for (const [width, height] of WINDOWS) {
      await page.setViewportSize({ width, height });
      await page.evaluate(
        'new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)))',
      );
      // in a low window the panel scrolls, and what is scrolled away lies under the foot
      const scrolls = width <= 1100 || height < 800;
      expect({ width, found: await overlaps(page, scrolls) }).toEqual({ width, found: [] });
      expect(await sidewaysPx(page)).toBeLessThanOrEqual(0);
    }
  });

  it('stands in two columns down to 900 pixels', async () => {
    const { page } = watched;
    await page.setViewportSize({ width: 900, height: 800 });
    const [map, verdict] = [await box(page, '.map-place'), await box(page, '.verdict')];
    expect(map.x + map.width).toBeLessThanOrEqual(verdict.x + 2);
    expect(map.y).toBeCloseTo(verdict.y, 0);
  });

  it('shows at 390 pixels findings, map or strip by itself, at full width, by the keyboard as well', async () => {
    const { page } = watched;
    await page.setViewportSize({ width: 390, height: 844 });
    await page.locator('.rows').waitFor();
    expect(await page.locator('.strip-place').isVisible()).toBe(false);
    await page.getByRole('button', { name: 'Findings', exact: true }).focus();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect((await box(page, '.map-place')).width).toBe(390);
    expect(await page.locator('.verdict').isVisible()).toBe(false);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect((await box(page, '.strip-place')).width).toBe(390);
    expect(await page.locator('.map-place').isVisible()).toBe(false);
    await page.locator('.strip-finding.strip-of-barred').first().click();
    await page.locator('.row-open').waitFor({ timeout: SOON_MS });
    spend();
  });

  it('begins a part chosen far down the findings below the parts, with its buttons in sight', async () => {
    const { page } = watched;
    await page.setViewportSize({ width: 390, height: 800 });
    await page.locator('.row-head').last().click();
    await page.getByRole('button', { name: 'Strip', exact: true }).click();
    await expect
      .poll(async () => {
        const [strip, parts] = [await box(page, '.strip-place'), await box(page, '.parts')];
        return strip.y - parts.y - parts.height;
      })
      .toBeGreaterThanOrEqual(-1);
    const [scale, status] = [await box(page, '.strip-scale'), await box(page, '.status-line')];
    expect(scale.y + scale.height).toBeLessThanOrEqual(status.y);
    spend();
  });
});

describe('strip and rows', { timeout: LONG_MS }, () => {
  it('run the same way: scrolled to their end the rows take the strip to the drive’s end with them', async () => {
    const { page } = watched;
    const strip = page.locator('.strip-scroll');
    const at = () =>
      strip.evaluate(
        ({ scrollTop, scrollHeight, clientHeight }) => scrollTop / (scrollHeight - clientHeight),
      );
    expect(await at()).toBe(0);
    const rows = page.locator('.rows-place');
    await rows.evaluate((box) => box.scrollTo(0, box.scrollHeight / 3));
    await expect.poll(at).toBeGreaterThan(0.1);
    expect(await at()).toBeLessThan(0.9);
    await rows.evaluate((box) => box.scrollTo(0, box.scrollHeight));
    await expect.poll(at).toBeGreaterThan(0.98);
    await rows.evaluate((box) => box.scrollTo(0, 0));
    await expect.poll(at).toBeLessThan(0.02);
  });

  it('the strip is keyed the way it runs: down is on along the drive', async () => {
    const { page } = watched;
    await page.getByRole('slider', { name: 'Place along the drive' }).focus();
    await page.keyboard.press('PageDown');
    await page.locator('.strip-here', { hasText: '1.0 km' }).waitFor();
    await page.keyboard.press('ArrowUp');
    await page.locator('.strip-here', { hasText: '0.9 km' }).waitFor();
    spend();
  });
});

describe('the browser’s Back', { timeout: LONG_MS }, () => {
  it('goes through views and opened findings, and does not leave the window', async () => {
    const { page } = watched;
    await barredRow(page, 'height').click();
    await page.locator('.row-open', { hasText: 'Barred height' }).waitFor();
    await page.getByRole('tab', { name: 'Load' }).click();
    await page.goBack();
    await page.locator('.row-open', { hasText: 'Barred height' }).waitFor();
    await page.goBack();
    await expect.poll(() => page.locator('.row-open').count()).toBe(0);
    await page.goForward();
    await page.locator('.row-open', { hasText: 'Barred height' }).waitFor();
    for (let i = 0; i < 4; i++) {
      await page.goBack().catch(() => {});
      // a person is slower than the step up again that follows the lowest one
      await expect.poll(() => page.evaluate("'view' in history.state")).toBe(true);
    }
    await page.locator('.verdict-word', { hasText: 'Barred' }).waitFor();
    expect(watched.complaints).toEqual([]);
    spend();
  });

  it('leaves a dialog as it is, with what was typed into it', async () => {
    const { page } = watched;
    await barredRow(page, 'height').click();
    await page.getByRole('button', { name: 'Settings' }).click();
    await page.goBack().catch(() => {});
    expect(await page.getByRole('dialog').isVisible()).toBe(true);
    spend();
  });
});

describe('while a drive is checked', { timeout: LONG_MS }, () => {
  it('no nought is shown, and the window says that it checks', async () => {
    const { page } = watched;
    let goOn = () => {};
    const held = new Promise<void>((resolve) => {
      goOn = resolve;
    });
    await page.route('**/call/check', async (route) => {
      await held;
      await route.continue();
    });
    await page.reload();
    await page.locator('.verdict-word', { hasText: 'Checking…' }).waitFor({ timeout: SOON_MS });
    const told = await page.locator('.level-toggle').allInnerTexts();
    expect(told).toHaveLength(4);
    for (const text of told) expect(text).toMatch(/checking…$/);
    goOn();
    await page.locator('.verdict-word', { hasText: 'Barred' }).waitFor({ timeout: SOON_MS });
  });
});

async function box(page: Page, part: string) {
  const found = await page.locator(part).boundingBox();
  if (!found) throw new Error(`${part} is not shown`);
  return found;
}
