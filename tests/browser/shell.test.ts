import { describe, expect, it } from 'vitest';
import { axeFaults } from './support/axe.ts';
import { openPage, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';

let watched: WatchedPage;

withSampleWindow((opened) => {
  watched = opened;
});

describe('the shell', { timeout: 90_000 }, () => {
  it('does not move while a check runs or long work comes and goes', async () => {
    const { page } = watched;
    await page.evaluate(`window.shifted = 0; new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) if (entry.hadRecentInput) continue; window.shifted += entry.value; (window.shifts ??= []).push(entry.value + ' ' + entry.sources.map(({ node }) => node?.className).join());
    }).observe({ type: 'layout-shift', buffered: true })`);
    await page.getByLabel('Leave', { exact: true }).fill('2027-06-12T09:30');
    await page.getByText('there at').waitFor({ timeout: SOON_MS });
    expect(
      Number(await page.evaluate('window.shifted')),
      String(await page.evaluate('window.shifts')),
    ).toBeLessThan(0.02);
  });

  it('answers a window whose address is spent with a sentence', async () => {
    const second = await openPage(watched.page.context(), watched.address);
    await second.page.getByRole('alert').filter({ hasText: 'This address has been used' }).waitFor();
    expect(await axeFaults(second.page)).toEqual([]);
    await second.page.close();
  });
});
