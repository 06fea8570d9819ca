import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFaults, sidewaysPx } from './support/axe.ts';
import { findingsTold, LONG_MS, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';

let watched: WatchedPage;
let page: Page;

withSampleWindow(async (opened) => {
  watched = opened;
  page = opened.page;
  await page.getByRole('button', { name: 'Cards…' }).click();
});

const unfold = (title: string) => page.locator('summary', { hasText: title }).click();

describe('vehicle cards', { timeout: LONG_MS }, () => {
  it('take a lower height in feet and inches, keep it, and the drive is checked with it', async () => {
    await page.getByRole('textbox', { name: /^Height/ }).fill('8\'10"');
    expect(await page.getByText('2.70 m (8\'10")').isVisible()).toBe(true);
    await page.getByRole('button', { name: 'Keep this card', exact: true }).click();
    await page.getByText('Kept. The drive is checked with it.').waitFor({ timeout: SOON_MS });
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    // 9'6" over a vehicle of 8'10" and its 5 cm for measuring: no longer barred
    await findingsTold(page, /2 barred/);
  });

  it('refuse a figure that is none beside its field, and keep nothing', async () => {
    await unfold('Wheelbase and overhangs');
    await page.getByRole('textbox', { name: /^Wheelbase/ }).fill('long');
    expect(await page.getByText('"long" is no length').isVisible()).toBe(true);
    await page.getByRole('button', { name: 'Keep this card', exact: true }).click();
    // the keyboard stands at the first field that is wrong
    await page.locator('#card-wheelbaseM:focus').waitFor({ timeout: SOON_MS });
    expect(await page.getByText('Missing or wrong: ').isVisible()).toBe(true);
    await page.getByRole('button', { name: 'Put back as it was' }).click();
    expect(await page.getByText('"long" is no length').count()).toBe(0);
  });

  it('hold what is typed while another vehicle is looked at and the dialog is closed', async () => {
    const height = page.getByRole('textbox', { name: /^Height/ });
    const chosen = page.getByRole('list', { name: 'Fleet' }).getByRole('button', { pressed: true });
    const name = await chosen.textContent();
    await height.fill('2.5');
    await page.getByRole('button', { name: 'Panel van 6.0', exact: true }).click();
    expect(await height.inputValue()).not.toBe('2.5');
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.getByRole('button', { name: 'Cards…' }).click();
    await page.getByRole('button', { name: `${name} not kept yet` }).click();
    expect(await height.inputValue()).toBe('2.5');
  });

  it('begin empty, and are no vehicle to check with until they are kept', async () => {
    const fleet = page.getByRole('list', { name: 'Fleet' });
    await fleet.getByRole('button').first().waitFor();
    const before = await fleet.getByRole('button').count();
    const height = page.getByRole('textbox', { name: /^Height/ });
    await page.getByRole('button', { name: 'New card', exact: true }).click();
    await page.locator('#card-name:focus').waitFor({ timeout: SOON_MS });
    expect(await height.inputValue()).toBe('');
    await page.getByLabel('Name').fill('Fresh one');
    await page.getByRole('button', { name: 'Keep this card', exact: true }).click();
    await page.getByText('Missing or wrong: ').waitFor({ timeout: SOON_MS });
    // the check goes on with the vehicle it had, and what is typed waits
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    expect(await page.locator('#vehicle-select option', { hasText: 'Fresh one' }).count()).toBe(0);
    await page.getByRole('button', { name: 'Cards…' }).click();
    await fleet.getByRole('button', { name: 'Panel van 6.0', exact: true }).click();
    expect(await height.inputValue()).not.toBe('');
    await fleet.getByRole('button', { name: 'Fresh one not kept yet' }).click();
    await unfold('Axle plates and empty weight');
    await page
      .locator('summary', { hasText: 'Wheelbase and overhangs' })
      .and(page.locator('details:not([open]) > *'))
      .click();
    for (const [name, text] of [
      [/^Height/, '2.7'],
      [/^Width of the body/, '2.1'],
      [/^Width over mirrors/, '2.5'],
      [/^Length of the body/, '6'],
      [/^Wheelbase/, '4'],
      [/^Front overhang/, '0.9'],
      [/^Rear overhang/, '1.1'],
    ] as const)
      await page.getByRole('textbox', { name }).fill(text);
    await page.locator('#card-grossKg').fill('3500');
    await page.locator('#card-axleFrontKg').fill('1850');
    await page.locator('#card-axleRearKg').fill('2000');
    await page.getByRole('button', { name: 'Keep this card', exact: true }).click();
    await page.getByText('Kept. The drive is checked with it.').waitFor({ timeout: SOON_MS });
    await fleet.getByRole('button', { name: 'Fresh one', exact: true, pressed: true }).waitFor();
    expect(await fleet.getByRole('button').count()).toBe(before + 1);
    await page.getByRole('button', { name: 'New card', exact: true }).click();
    await page.getByRole('button', { name: 'Throw it away' }).click();
    expect(await fleet.getByRole('button').count()).toBe(before + 1);
  });

  it('turn red at a figure only once it is left, or the card is to be kept', async () => {
    await page.getByRole('button', { name: 'New card', exact: true }).click();
    const red = page.locator('.vehicle-card [aria-invalid="true"]');
    await page.getByLabel('Name').fill('Fresh one');
    const height = page.getByRole('textbox', { name: /^Height/ });
    await height.focus();
    expect(await red.count()).toBe(0);
    await page.keyboard.press('Tab');
    expect(await page.locator('#card-heightM').getAttribute('aria-invalid')).toBe('true');
    expect(await red.count()).toBe(1);
    await page.getByText('3 figures to give').waitFor();
    await page.getByRole('button', { name: 'Keep this card', exact: true }).click();
    await page.locator('#card-heightM:focus').waitFor({ timeout: SOON_MS });
    expect(await red.count()).toBe(10);
  });

  it('ask whether 3050 was meant as 3.05 m, and one press takes it', async () => {
    const height = page.getByRole('textbox', { name: /^Height/ });
    await height.fill('3050');
    await page.getByRole('button', { name: '3.05 m?' }).click();
    expect(await height.inputValue()).toBe('3.05');
  });

  it('give a length back in feet and inches as it was typed', async () => {
    await unfold('Ground clearance and gas');
    await page.locator('#card-bellyClearanceM').fill('7 1/2"');
    await page.getByRole('button', { name: 'Keep this card', exact: true }).click();
    await page.getByText('Kept. The drive is checked with it.').waitFor({ timeout: SOON_MS });
    await page.getByRole('button', { name: 'Panel van 6.0', exact: true }).click();
    await page.getByRole('button', { name: 'Coach-built 7.4 with rack', exact: true }).click();
    expect(await page.locator('#card-bellyClearanceM').inputValue()).toBe('0\'7 1/2"');
  });

  it('carry the letters of the drawing beside their fields', async () => {
    const drawn = await page.locator('.card-letter-drawn').allTextContents();
    const beside = await page.locator('.card-letter').allTextContents();
    expect([...drawn].sort()).toEqual(['A', 'B', 'C', 'D', 'E', 'F', 'G']);
    expect(beside).toEqual(expect.arrayContaining(drawn));
  });

  it('taken off the fleet can each be brought back, the sample’s own and an opened one alike', async () => {
    await page.getByLabel('Vehicle card to open').setInputFiles({
      name: 'card.json',
      mimeType: 'application/json',
      buffer: Buffer.from(
        readFileSync('sample-routes/vehicles/coach-built-7.0.json', 'utf8').replace(
          /"name": "[^"]*"/,
          '"name": "Opened"',
        ),
      ),
    });
    await page
      .getByRole('button', { name: 'Opened', exact: true, pressed: true })
      .waitFor({ timeout: SOON_MS });
    for (const name of ['Opened', 'Panel van 6.0']) {
      await page.getByRole('list', { name: 'Fleet' }).getByRole('button', { name, exact: true }).click();
      await page.getByRole('button', { name: 'Take off the fleet', exact: true }).click();
      await page.getByText(`${name} is off the fleet.`).waitFor({ timeout: SOON_MS });
    }
    for (const name of ['Opened', 'Panel van 6.0']) {
      await page.getByRole('button', { name: `Bring back ${name}` }).click();
      await page.getByRole('button', { name, exact: true }).waitFor({ timeout: SOON_MS });
    }
  });

  it('import a card, and refuse a misspelt one with its field', async () => {
    const card = {
      ...JSON.parse(readFileSync('sample-routes/vehicles/coach-built-7.0.json', 'utf8')),
      name: 'From a file',
    };
    const input = page.getByLabel('Vehicle card to open');
    const file = (text: string) => ({
      name: 'card.json',
      mimeType: 'application/json',
      buffer: Buffer.from(text),
    });
    await input.setInputFiles(file(JSON.stringify(card)));
    await page.getByRole('button', { name: 'From a file' }).waitFor({ timeout: SOON_MS });
    await input.setInputFiles(file(JSON.stringify({ ...card, name: 'Bad', hieghtM: 3 })));
    await page.getByText('hieghtM').waitFor({ timeout: SOON_MS });
    expect(await page.getByRole('button', { name: 'Bad' }).count()).toBe(0);
    await input.setInputFiles(file('nonsense'));
    await page.getByText('it is not JSON').waitFor({ timeout: SOON_MS });
  });

  it('without places are led to them by the load, and the load has the places that are kept', async () => {
    const text = readFileSync('sample-routes/vehicles/coach-built-7.0.json', 'utf8');
    const { seats: _, tanks: __, lockers: ___, ...bare } = JSON.parse(text);
    await page.getByLabel('Vehicle card to open').setInputFiles({
      name: 'bare.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify({ ...bare, name: 'Bare' })),
    });
    await page.getByRole('button', { name: 'Bare', exact: true }).waitFor({ timeout: SOON_MS });
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.getByRole('tab', { name: 'Load', exact: true }).click();
    await page.getByRole('button', { name: 'Add places to the card…' }).click();
    await page.locator('#card-add-seats:focus').waitFor({ timeout: SOON_MS });
    await page.keyboard.press('Enter');
    await page.locator('#card-seats-0-name:focus').waitFor({ timeout: SOON_MS });
    await page.keyboard.press('Tab');
    await page.keyboard.type('0.35');
    await page.getByRole('button', { name: 'Add a tank' }).click();
    await page.getByLabel('Tank 1, holds').selectOption('fresh water');
    await page.getByLabel('Tank 1, metres behind the front axle').fill('8\'2"');
    expect(await page.getByText('Tank 1: How many litres it holds is missing.').isVisible()).toBe(true);
    await page.getByLabel('Tank 1, litres').fill('105');
    expect(await page.getByText('Tank 1: 2.49 m (8\'2") behind the front axle.').isVisible()).toBe(true);
    for (const name of ['Shelf', 'rack']) {
      await page.getByRole('button', { name: 'Add a locker' }).click();
      await page.locator('[id^="card-lockers-"][id$="-name"]').last().fill(name);
    }
    await page.getByLabel('Locker 2, metres behind the front axle').fill('5.1');
    await page.getByRole('button', { name: 'Remove locker 1' }).click();
    await page.locator('#card-lockers-0-remove:focus').waitFor({ timeout: SOON_MS });
    await page.getByRole('button', { name: 'Keep this card', exact: true }).click();
    await page.locator('#card-lockers-0-name:focus').waitFor({ timeout: SOON_MS });
    expect(await page.getByText('Locker 1: "rack" is the rear rack’s own name.').isVisible()).toBe(true);
    expect(await axeFaults(page)).toEqual([]);
    await page.getByLabel('Locker 1, name').fill('Garage');
    await page.getByRole('button', { name: 'Keep this card', exact: true }).click();
    await page.getByText('Kept. The drive is checked with it.').waitFor({ timeout: SOON_MS });
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    expect(await page.getByRole('button', { name: 'Add places to the card…' }).count()).toBe(0);
    expect(
      await page
        .getByLabel(/^Driver/)
        .first()
        .isVisible(),
    ).toBe(true);
    await page.getByLabel('Can we take …?').selectOption({ index: 1 });
    const places = page.getByRole('combobox', { name: 'Where' }).locator('option');
    expect(await places.allTextContents()).toEqual(expect.arrayContaining(['Driver', 'Garage']));
  });

  it('have no fault of access, day and night, wide and narrow', async () => {
    for (const colorScheme of ['light', 'dark'] as const)
      for (const width of [1280, 820, 390]) {
        await page.emulateMedia({ colorScheme });
        await page.setViewportSize({ width, height: 800 });
        expect(await axeFaults(page)).toEqual([]);
        expect(await sidewaysPx(page)).toBeLessThanOrEqual(0);
      }
    expect(watched.complaints).toEqual([]);
  });
});
