import { describe, expect, it } from 'vitest';
import { gpx } from './support/files.ts';
import { barredRow, LONG_MS, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';

let watched: WatchedPage;

const { spend } = withSampleWindow(
  (opened) => {
    watched = opened;
  },
  { again: ({ page }) => page.mouse.move(0, 0) },
);

describe('the map of the sample drive', { timeout: LONG_MS }, () => {
  it('has each row in a mark, start and finish, our own base map under it, and whose data it is', async () => {
    const { page } = watched;
    await page.locator('.map-mark').first().waitFor({ timeout: SOON_MS });
    const counts = await page
      .locator('.map-mark [data-count]')
      .evaluateAll((marks) => marks.map((mark) => Number(mark.getAttribute('data-count'))));
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(await page.locator('.row-head').count());
    expect(await page.locator('.map-end').allInnerTexts()).toEqual(['Start', 'Finish']);
    await page.locator('.drive-map canvas.leaflet-tile-loaded').first().waitFor({ timeout: SOON_MS });
    await page.locator('.leaflet-control-attribution', { hasText: '© OpenStreetMap contributors' }).waitFor();
    expect(await page.locator('.map-vehicle').count()).toBe(1);
    expect(watched.complaints).toEqual([]);
  });

  it('a mark clicked opens its finding, and a row opened stands out on the map', async () => {
    const { page } = watched;
    await page.locator('.map-mark [data-count="1"]').first().click();
    await page.locator('.map-mark-chosen').waitFor({ timeout: SOON_MS });
    await barredRow(page, 'weight').click();
    const chosen = page.locator('.map-mark-chosen [data-finding^="mass"]');
    await chosen.waitFor({ timeout: SOON_MS });
    const mark = await chosen.boundingBox();
    const map = await page.locator('.drive-map').boundingBox();
    expect(mark && map && mark.x > map.x && mark.x < map.x + map.width && mark.y > map.y).toBe(true);
    expect(mark?.width).toBeGreaterThanOrEqual(24);
    expect(watched.complaints).toEqual([]);
    spend();
  });

  it('goes to the place that a button under the verdict names, in its middle and from near, and back to the whole drive', async () => {
    const { page } = watched;
    const scale = page.locator('.leaflet-control-scale-line').first();
    const whole = await scale.textContent();
    await page.locator('.deciding-place', { hasText: 'Oxholt Bridge' }).click();
    const chosen = page.locator('.map-mark-chosen [data-finding^="mass"]');
    await chosen.waitFor({ timeout: SOON_MS });
    const [mark, map] = [await chosen.boundingBox(), await page.locator('.drive-map').boundingBox()];
    expect(Math.abs((mark?.x ?? 0) - (map?.x ?? 0) - (map?.width ?? 0) / 2)).toBeLessThan(60);
    expect(await scale.textContent()).toBe('50 m');
    await page.locator('.row-open', { hasText: 'Barred weight' }).waitFor();
    await page.getByRole('button', { name: 'Whole drive' }).click();
    expect(await scale.textContent()).toBe(whole);
    await page.getByRole('button', { name: 'This place' }).click();
    expect(await scale.textContent()).toBe('50 m');
    spend();
  });

  it('zooms one level a notch of the wheel, and never out of what is known', async () => {
    const { page } = watched;
    const map = await page.locator('.drive-map').boundingBox();
    await page.mouse.move((map?.x ?? 0) + 200, (map?.y ?? 0) + 300);
    const shown = () => page.locator('.leaflet-control-scale-line').first().textContent();
    expect(await shown()).toBe('1 km');
    await page.mouse.wheel(0, -120);
    await expect.poll(shown).toBe('500 m');
    for (let notch = 0; notch < 9; notch++) await page.mouse.wheel(0, 120);
    await page.locator('a.leaflet-control-zoom-out.leaflet-disabled').waitFor();
    expect(await shown()).toMatch(/^[1235] km$/);
    spend();
  });

  it('shows a longer drive than the one before whole, where the map before was small', async () => {
    const { page } = watched;
    // 70 km: 1° of longitude at 50° north
    const places = Array.from({ length: 101 }, (_, i) => `<trkpt lat="50" lon="${8 + i / 100}"/>`);
    await page.getByRole('button', { name: 'Open…', exact: true }).click();
    await page
      .locator('dialog input[type=file]')
      .setInputFiles(
        gpx('long.gpx', `<gpx version="1.1"><trk><trkseg>${places.join('')}</trkseg></trk></gpx>`),
      );
    await page.locator('.drive-name', { hasText: 'long.gpx' }).waitFor({ timeout: SOON_MS });
    await page.getByRole('button', { name: 'Whole drive' }).click();
    const map = await page.locator('.drive-map').boundingBox();
    for (const say of ['Start', 'Finish']) {
      const end = await page.locator('.map-end', { hasText: say }).boundingBox();
      expect(end && map && end.x >= map.x && end.x < map.x + map.width, say).toBe(true);
    }
    spend();
  });

  it('a mark under the pointer is named, and its row stands out', async () => {
    const { page } = watched;
    await page.locator('.map-mark [data-finding^="width"]').hover();
    await page.locator('.mark-names', { hasText: 'Barred width: 0.35 m over, Tanner Row, 2.2 km' }).waitFor();
    await page.locator('.row-near', { hasText: 'Barred width' }).waitFor();
  });

  it('its zoom buttons have names, and its marks are no stops of the keyboard', async () => {
    const { page } = watched;
    await page.getByRole('button', { name: 'Zoom in' }).click();
    await page.getByRole('button', { name: 'Zoom out' }).click();
    expect(await page.locator('.leaflet-marks-pane [tabindex="0"]').count()).toBe(0);
    expect(await page.locator('.leaflet-marks-pane').getAttribute('aria-hidden')).toBe('true');
  });
});
