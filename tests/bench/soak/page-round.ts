import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

/** How often a round does what. */
export const A_PAGE_ROUND = { drives: 2, checks: 10, drags: 12, lessonMs: 1500 } as const;
const LESSONS = ['Pulling away', 'Into a side road', 'Mini-roundabout'];
const DRIVES = ['barred', 'everything', 'clear'];

/** Drops a file on the window. */
const DROP = `({ name, text }) => {
  const dataTransfer = new DataTransfer();
  dataTransfer.items.add(new File([text], name));
  for (const type of ['dragover', 'drop'])
    document.body.dispatchEvent(new DragEvent(type, { dataTransfer, bubbles: true, cancelable: true }));
}`;

/** What somebody does with the window, in small: another drive, the map panned, other vehicles, every view, a lesson. */
export async function pageRound(page: Page, round: number): Promise<void> {
  for (let drive = 0; drive < A_PAGE_ROUND.drives; drive++) {
    const checked = page.waitForResponse(/\/call\/check$/u, { timeout: 120_000 });
    const name = DRIVES[(round + drive) % DRIVES.length]!;
    // dropped, not chosen: a browser that is driven from outside keeps every input that files were put into
    const file = { name: `${name}.gpx`, text: readFileSync(`sample-routes/drives/${name}.gpx`, 'utf8') };
    await page.evaluate(`(${DROP})(${JSON.stringify(file)})`);
    await checked;
    await panMap(page);
  }
  await changeVehicles(page);
  for (const tab of await page.getByRole('tab').all()) {
    await tab.click();
    await page.waitForTimeout(150);
  }
  await playLesson(page, LESSONS[round % LESSONS.length]!);
  await page.getByRole('tab', { name: 'Drive' }).click();
}

async function panMap(page: Page): Promise<void> {
  const box = await page.locator('.drive-map').boundingBox();
  if (!box) throw new Error('there is no map');
  const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  for (let drag = 0; drag < A_PAGE_ROUND.drags; drag++) {
    const away = { x: at.x + 200 * Math.cos(drag), y: at.y + 120 * Math.sin(drag) };
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await page.mouse.move(away.x, away.y, { steps: 6 });
    await page.mouse.up();
    await page.mouse.wheel(0, drag % 4 < 2 ? -60 : 60);
    await page.waitForTimeout(60);
  }
}

async function changeVehicles(page: Page): Promise<void> {
  const choice = page.getByLabel('Vehicle', { exact: true });
  const count = await choice.locator('option').count();
  for (let check = 0; check < A_PAGE_ROUND.checks; check++) {
    await choice.selectOption({ index: check % Math.min(count, 3) });
    await page.waitForTimeout(60);
  }
}

async function playLesson(page: Page, name: string): Promise<void> {
  await page.getByRole('tab', { name: 'Swing' }).click();
  await page.getByRole('button', { name, exact: true }).click();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.waitForTimeout(A_PAGE_ROUND.lessonMs);
}
