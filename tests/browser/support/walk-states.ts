import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { axeFaults, colourFaults, sidewaysPx } from './axe.ts';
import type { WatchedPage } from './page.ts';

/** States of the window, each reached from the one before. */
export type States = readonly (readonly [name: string, reach: (page: Page) => Promise<unknown>])[];

const WIDTHS: readonly number[] = [820, 1280, 1920];
const PALETTES = ['light', 'dark'] as const;

/**
 * Walks the states one after the other and looks at each at several widths: not wider than its window anywhere, and at
 * one width after the other, by day and by night, free of faults of access; with no complaint on the page. By night
 * only the colours are looked at anew: document and layout are those of the day.
 */
export async function walkStates(
  { page, complaints }: WatchedPage,
  states: States,
  widths = WIDTHS,
): Promise<void> {
  const faults: string[] = [];
  let looked = 0;
  for (const [i, [name, reach]] of states.entries()) {
    await reach(page);
    for (const [j, width] of widths.entries()) {
      await page.setViewportSize({ width, height: width === 1920 ? 1080 : 800 });
      const where = `${name}, ${width}`;
      const sideways = await sidewaysPx(page);
      if (sideways > 0) faults.push(`${where}: ${sideways} px too wide`);
      if (j !== i % widths.length) continue;
      for (const colorScheme of PALETTES) {
        await page.emulateMedia({ colorScheme });
        await page.evaluate(
          'new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)))',
        );
        const found = colorScheme === 'light' ? await axeFaults(page) : await colourFaults(page);
        for (const fault of found) faults.push(`${where}, ${colorScheme}: ${fault}`);
        looked++;
      }
    }
  }
  expect(faults).toEqual([]);
  expect(complaints).toEqual([]);
  expect(looked).toBe(states.length * PALETTES.length);
}
