import { describe, expect, it } from 'vitest';
import { barredRow, LONG_MS, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';

let watched: WatchedPage;

withSampleWindow((opened) => {
  watched = opened;
});

describe('the map of the sample drive', { timeout: LONG_MS }, () => {
  it('shows a mark for each row, our own base map under it, and whose data it is', async () => {
    const { page } = watched;
    await page.locator('.map-mark').first().waitFor({ timeout: SOON_MS });
    expect(await page.locator('.map-mark').count()).toBe(await page.locator('.row-head').count());
    await page.locator('.drive-map canvas.leaflet-tile-loaded').first().waitFor({ timeout: SOON_MS });
    await page.locator('.leaflet-control-attribution', { hasText: '© OpenStreetMap contributors' }).waitFor();
    expect(await page.locator('.map-vehicle').count()).toBe(1);
    expect(watched.complaints).toEqual([]);
  });

  it('a mark clicked opens its finding, and a row opened stands out on the map', async () => {
    const { page } = watched;
    await page.locator('.map-mark').first().click();
    await page.locator('.map-mark-chosen').waitFor({ timeout: SOON_MS });
    await barredRow(page, 'height').click();
    const chosen = page.locator('.map-mark-chosen [data-finding^="height"]');
    await chosen.waitFor({ timeout: SOON_MS });
    const mark = await chosen.boundingBox();
    const map = await page.locator('.drive-map').boundingBox();
    expect(mark && map && mark.x > map.x && mark.x < map.x + map.width && mark.y > map.y).toBe(true);
    expect(mark?.width).toBeGreaterThanOrEqual(24);
    expect(watched.complaints).toEqual([]);
  });

  it('its zoom buttons have names, and its marks are no stops of the keyboard', async () => {
    const { page } = watched;
    await page.getByRole('button', { name: 'Zoom in' }).click();
    await page.getByRole('button', { name: 'Zoom out' }).click();
    expect(await page.locator('.leaflet-marks-pane [tabindex="0"]').count()).toBe(0);
    expect(await page.locator('.leaflet-marks-pane').getAttribute('aria-hidden')).toBe('true');
  });
});
