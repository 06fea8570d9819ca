import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { LONG_MS, SOON_MS } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';

let page: Page;

withSampleWindow(
  (watched) => {
    page = watched.page;
  },
  { quiet: true, again: asAtFirst },
);

/** The drive with nothing opened, and the first lesson as it was before anybody changed it. */
async function asAtFirst(): Promise<void> {
  await tab('Swing').click();
  await lesson('Pulling away').click();
  const drivesByHand = lesson('Back to the lesson');
  if (await drivesByHand.isVisible()) await drivesByHand.click();
  await page.getByLabel('Compare with').selectOption({ index: 0 });
  await page.getByLabel(/with its rack/).check();
  await page.getByRole('slider', { name: 'Gap beside the vehicle' }).fill('0.3');
  await lesson('To the start').click();
  await tab('Drive').click();
  const opened = page.locator('.row-head[aria-expanded="true"]');
  if ((await opened.count()) > 0) await opened.click();
  await page.evaluate("for (const each of document.querySelectorAll('*')) each.scrollTop = 0");
}

const tab = (name: string) => page.getByRole('tab', { name, exact: true });
const lesson = (name: string) => page.getByRole('button', { name, exact: true });
const scrub = () => page.getByRole('slider', { name: 'Rolled so far' });
const rolledM = async () => Number(await scrub().inputValue());

async function pagesPrinted(): Promise<number> {
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  return pdf.match(/\/Type \/Page\b/g)?.length ?? 0;
}

describe('the views', { timeout: LONG_MS }, () => {
  it('are changed by arrows and Alt with a digit; a reload brings back the one that was shown', async () => {
    await tab('Drive').focus();
    await page.keyboard.press('ArrowRight');
    expect(await tab('Swing').getAttribute('aria-selected')).toBe('true');
    expect(await page.evaluate('document.activeElement.id')).toBe('tab-swing');
    await page.keyboard.press('Alt+2');
    expect(await tab('Drive').getAttribute('aria-selected')).toBe('true');
    await page.keyboard.press('Alt+3');
    await page.reload();
    await tab('Swing').and(page.locator('[aria-selected="true"]')).waitFor({ timeout: SOON_MS });
    await page.getByRole('heading', { name: 'Pulling away from a wall' }).waitFor({ timeout: SOON_MS });
  });

  it('leave the drive as it was: the opened finding, the place in the list, the map', async () => {
    await page.locator('.row-head').last().click();
    const before = await page.evaluate("document.querySelector('.rows-place').scrollTop");
    const map = await page.evaluate("document.querySelector('.leaflet-map-pane').style.transform");
    await tab('Swing').click();
    expect(await page.getByLabel('Leave', { exact: true }).isVisible()).toBe(false);
    await tab('Drive').click();
    expect(await page.locator('.row-head').last().getAttribute('aria-expanded')).toBe('true');
    expect(await page.evaluate("document.querySelector('.rows-place').scrollTop")).toBe(before);
    expect(await page.evaluate("document.querySelector('.leaflet-map-pane').style.transform")).toBe(map);
  });
});

describe('a lesson', { timeout: LONG_MS }, () => {
  beforeEach(() => tab('Swing').click());

  it('plays as far as it touches, and says so', async () => {
    await lesson('Play').click();
    await page
      .locator('.swing-stop', { hasText: /0\.\d m from the start the .* touches the wall/ })
      .waitFor();
    expect(await rolledM()).toBeLessThan(1);
    await page.getByRole('button', { name: 'Play' }).waitFor();
    const told = page.getByTestId('swing-announcer').filter({ hasText: 'touches the wall' });
    await told.waitFor({ state: 'attached' });
    await lesson('Play').click();
    await page.locator('.scrub-figure', { hasText: /^1\.[2-9]/ }).waitFor();
    await lesson('Pause').click();
  });

  it('has the gap decide: gap − swing = spare, and no touch where it is wide enough', async () => {
    const gap = page.getByRole('slider', { name: 'Gap beside the vehicle' });
    await gap.fill('0.3');
    expect(await page.locator('.sum-line').textContent()).toBe(
      'gap 30 cm − tail swing beside it 61 cm = −31 cm',
    );
    await gap.fill('0.9');
    expect(await page.locator('.sum-line').textContent()).toBe(
      'gap 90 cm − tail swing beside it 61 cm = 29 cm',
    );
    expect(await page.locator('.swing-contact').textContent()).toContain('Nothing is touched.');
    await page.getByLabel(/with its rack/).uncheck();
    expect(await page.locator('.sum-line').textContent()).toBe(
      'gap 90 cm − tail swing beside it 46 cm = 44 cm',
    );
  });

  it('is steered by hand with the arrows, and stops where it touches', async () => {
    await lesson('Steer by hand').click();
    await page.keyboard.down('ArrowRight');
    await page.locator('.scrub-figure', { hasText: '100 % right' }).waitFor();
    await page.keyboard.up('ArrowRight');
    await page.keyboard.down('ArrowUp');
    await page.locator('.swing-contact', { hasText: 'It touches the wall' }).waitFor({ timeout: SOON_MS });
    await page.keyboard.up('ArrowUp');
    await page.getByRole('button', { name: 'Back', exact: true }).press('Enter');
    await page.locator('.swing-contact', { hasText: 'Nothing is touched.' }).waitFor();
    await lesson('Back to the lesson').click();
    expect(await rolledM()).toBe(0);
  });

  it('shows two vehicles at one scale', async () => {
    await page.getByLabel('Compare with').selectOption({ label: 'Panel van 6.0' });
    expect(await page.locator('.swing-drawing').count()).toBe(2);
    const scales = await page.evaluate(
      "[...document.querySelectorAll('.swing-drawing > svg > .swing-world')].map((g) => g.getAttribute('transform').split(' ')[0])",
    );
    expect((scales as string[])[0]).toBe((scales as string[])[1]);
    expect(await page.locator('.swing-sum').count()).toBe(2);
  });

  it('where less motion is asked for stands still as a fan, is played in steps, and is scrubbed all the same', async () => {
    await lesson('To the start').click();
    const moving = await page.locator('.swing-ghost').count();
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await lesson('Play in steps').waitFor();
    expect(await page.locator('.swing-drawings .swing-ghost').count()).toBeGreaterThan(moving / 2);
    await lesson('Play in steps').click();
    // it stands at a step or at the touch, never in between
    await page.waitForFunction(
      'Number(document.querySelector(\'[aria-label="Rolled so far"]\').value) > 0.3',
    );
    await lesson('To the start').click();
    await scrub().focus();
    await page.keyboard.press('ArrowRight');
    expect(await rolledM()).toBeCloseTo(0.1, 6);
    await page.emulateMedia({ reducedMotion: 'no-preference' });
  });

  it('has its figures numbered, in the drawing as beside them', async () => {
    for (const name of ['Mini-roundabout', 'A turn of the drive', 'Pulling away']) {
      await lesson(name).click();
      const listed = await page.locator('.swing-panel .key-number').allTextContents();
      expect(listed.length, name).toBeGreaterThan(2);
      expect(await page.locator('.swing-drawings .key-mark text').allTextContents(), name).toEqual(listed);
    }
  });

  it('gives way to the yard: what was measured goes on the card, the figures say so, and the page is one', async () => {
    await lesson('Measure in the yard').click();
    expect(await pagesPrinted()).toBe(1);
    await page.getByLabel('Across the inner rear tyre’s circle').fill('2');
    await page.getByText('No vehicle of this wheelbase turns in so small a circle').waitFor();
    expect(await lesson('Keep on the card').isDisabled()).toBe(true);
    await page.getByLabel('Across the inner rear tyre’s circle').fill('8.6');
    await lesson('Keep on the card').click();
    await page.getByText('On the card. The drive is checked with it.').waitFor({ timeout: SOON_MS });
    await lesson('Pulling away').click();
    await page.getByText('Worked out from full lock as measured in the yard').first().waitFor();
    await lesson('Measure in the yard').click();
    await lesson('Take off the card').click();
    await page.getByText('Off the card.').waitFor({ timeout: SOON_MS });
    await lesson('Pulling away').click();
  });

  it('is printed on one page with the fan, the sentences and room for notes', async () => {
    for (const name of ['Mini-roundabout', 'A turn of the drive', 'Pulling away']) {
      await lesson(name).click();
      expect(await pagesPrinted(), name).toBe(1);
      await page.getByLabel('Compare with').selectOption({ index: 1 });
      expect(await pagesPrinted(), `${name}, two vehicles`).toBe(1);
      await page.getByLabel('Compare with').selectOption({ index: 0 });
    }
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.lesson-page').isVisible()).toBe(true);
    expect(await page.locator('.bar').isVisible()).toBe(false);
    expect(await page.locator('.lesson-page').textContent()).toContain('Notes');
  });
});

describe('a turn of the drive', { timeout: LONG_MS }, () => {
  it('opens from its finding with its own geometry, and leads back to it', async () => {
    const row = page.locator('.row-head', { hasText: /(Take care|Tight) turn/ }).first();
    await row.click();
    await page.getByRole('button', { name: 'See this turn' }).click();
    expect(await tab('Swing').getAttribute('aria-selected')).toBe('true');
    await page.getByRole('heading', { name: /\d+° to the (left|right)/ }).waitFor();
    await page.getByRole('button', { name: 'Back to the drive at this turn' }).click();
    expect(await row.getAttribute('aria-expanded')).toBe('true');
    await page.waitForFunction('/(Take care|Tight) turn/.test(document.activeElement?.textContent)');
  });
});
