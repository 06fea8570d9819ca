import type { Page } from 'playwright-core';
import { type Task, tasksIn } from './page-tasks.ts';

/** Out by so many steps of the wheel, then in again further, dragging to and fro at each zoom. */
export async function panAndZoom(page: Page, zoomsOut = 4): Promise<void> {
  const box = await page.locator('.drive-map').boundingBox();
  if (!box) throw new Error('there is no map');
  const x = box.x + box.width / 2;
  const y = box.y + box.height / 2;
  const drag = async (dx: number, dy: number) => {
    await page.mouse.move(x - dx / 2, y - dy / 2);
    await page.mouse.down();
    await page.mouse.move(x + dx / 2, y + dy / 2, { steps: 15 });
    await page.mouse.up();
    await page.waitForTimeout(400);
  };
  await page.mouse.move(x, y);
  for (let out = 0; out < zoomsOut; out++) {
    await page.mouse.wheel(0, 60);
    await page.waitForTimeout(500);
  }
  await page.waitForTimeout(4000);
  // SHOT names a picture of the fullest view, to see that there was something to draw
  if (process.env['SHOT']) await page.screenshot({ path: process.env['SHOT'] });
  for (let zoom = 0; zoom < zoomsOut + 4; zoom++) {
    await drag(300, 120);
    await drag(-360, 60);
    await drag(60, -180);
    await page.mouse.wheel(0, -60);
    await page.waitForTimeout(500);
  }
}

/** Does something on a page. @returns the tasks of the page's main thread meanwhile, longest first */
export async function traced(page: Page, act: () => Promise<void>): Promise<Task[]> {
  const browser = page.context().browser();
  if (!browser) throw new Error('no browser');
  await browser.startTracing(page, { categories: ['toplevel', 'disabled-by-default-devtools.timeline'] });
  await act();
  return tasksIn(await browser.stopTracing());
}

export function sayTasks(when: string, tasks: readonly Task[]): void {
  const cpu = tasks.map(({ cpuMs }) => cpuMs).sort((a, b) => b - a);
  const few = (values: readonly number[]) =>
    values
      .slice(0, 5)
      .map((ms) => ms.toFixed(1))
      .join(', ');
  const over = tasks.filter(({ wallMs }) => wallMs > 100).length;
  console.log(
    `${when}: longest tasks ${few(tasks.map(({ wallMs }) => wallMs))} ms (${over} over 100 ms of ${tasks.length}); most work in one task ${few(cpu)} ms`,
  );
}
