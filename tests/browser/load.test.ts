import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { loadList } from './support/files.ts';
import { LONG_MS, SOON_MS } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';

let page: Page;

const { spend } = withSampleWindow(
  async (watched) => {
    page = watched.page;
    await tab('Load').click();
  },
  { quiet: true, again: emptied },
);

/** Nothing is aboard, nothing asked about, and all of it stands at its beginning. */
async function emptied(): Promise<void> {
  await tab('Load').click();
  const ask = page.getByLabel('Can we take');
  if ((await ask.inputValue()) !== '') await ask.selectOption('');
  if (await button('Clear').isEnabled()) await button('Clear').click();
  await button('Show the sample load').waitFor();
  await page.evaluate("for (const each of document.querySelectorAll('*')) each.scrollTop = 0");
}

const tab = (name: string) => page.getByRole('tab', { name, exact: true });
const button = (name: string | RegExp) => page.getByRole('button', { name });
const item = (name: string) => page.getByRole('slider', { name: new RegExp(`^${name}`) });
const decides = () => page.locator('.load-panel .sum-line').textContent();
/** What stands in the foot of the table: gross, front and rear as loaded. */
async function loadedKg(): Promise<{ gross: number; front: number; rear: number }> {
  const cells = await page.locator('.load-ledger tfoot tr:first-child td').allInnerTexts();
  return { gross: Number(cells[0]), front: Number(cells[2]), rear: Number(cells[3]) };
}
const showFamily = () => button('Show the sample load').click();

describe('an item of the drawing', { timeout: LONG_MS }, () => {
  beforeEach(showFamily);

  it('is carried by the pointer: the axles follow while it is held, and where it is put down', async () => {
    const before = await loadedKg();
    const box = await item('Garage').boundingBox();
    if (!box) throw new Error('the garage is not drawn');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x - 60, y, { steps: 4 });
    await page.mouse.move(x - 120, y, { steps: 4 });
    const held = await loadedKg();
    expect(held.rear).toBeLessThan(before.rear - 10);
    expect(held.gross).toBe(before.gross);
    await page.mouse.up();
    expect(await loadedKg()).toEqual(held);
    await page.keyboard.press('Control+z');
    expect(await loadedKg()).toEqual(before);
    await page.keyboard.press('Control+Shift+z');
    expect(await loadedKg()).toEqual(held);
  });

  it('is put back where it was by Escape while it is held', async () => {
    const before = await loadedKg();
    await item('Garage').focus();
    const box = await item('Garage').boundingBox();
    if (!box) throw new Error('the garage is not drawn');
    await page.mouse.move(box.x + 9, box.y + 9);
    await page.mouse.down();
    await page.mouse.move(box.x - 90, box.y + 9, { steps: 4 });
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect(await loadedKg()).toEqual(before);
  });

  it('is moved by the arrows: 5 cm, with Shift 50; the steps in a row are one to undo', async () => {
    const before = await loadedKg();
    const garage = item('Garage');
    await garage.focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowLeft');
    expect(await garage.getAttribute('aria-valuenow')).toBe('520');
    await page.keyboard.press('Shift+ArrowLeft');
    expect(await garage.getAttribute('aria-valuetext')).toContain('4.70 m behind the front axle');
    // 62 kg by 0.65 m over a wheelbase of 4.035 m: 10 kg from the rear to the front
    expect(before.rear - (await loadedKg()).rear).toBeCloseTo(10, -0.4);
    await page.keyboard.press('Control+z');
    expect(await loadedKg()).toEqual(before);
  });

  it('is taken off by Delete, the next one keeping the keyboard; Enter goes to its line in the table', async () => {
    await item('Kitchen things').focus();
    await page.keyboard.press('Delete');
    expect(await item('Kitchen things').count()).toBe(0);
    await page.waitForFunction("document.activeElement?.getAttribute('aria-label')?.startsWith('Clothes')");
    await page.keyboard.press('Enter');
    await page.waitForFunction(
      "document.activeElement?.getAttribute('aria-label') === 'Kilograms of Clothes and bedding'",
    );
    await page.keyboard.type('156');
    expect((await loadedKg()).gross).toBe(3526 - 48 + 100);
    await page.keyboard.press('Control+z');
    expect((await loadedKg()).gross).toBe(3526 - 48);
  });
});

describe('can we take the e-bikes?', { timeout: LONG_MS }, () => {
  it('yes, with nobody aboard; put aboard, they stand on the rack', async () => {
    await page.getByLabel('Can we take').selectOption('e-bike');
    await page.getByLabel('How many').fill('2');
    await page.locator('.load-answer', { hasText: 'Yes: 294 kg spare, front axle' }).waitFor();
    await button('Put aboard').click();
    expect(await item('E-bike').count()).toBe(2);
    expect(await page.getByLabel('Place of E-bike 2').inputValue()).toBe('rack');
  });

  it('no, with the family; the fix takes them along and keeps every plate; undo brings it all back', async () => {
    await showFamily();
    await button('Take off Two bicycles').click();
    const within = await loadedKg();
    await page.getByLabel('Can we take').selectOption('e-bike');
    await page.getByLabel('How many').fill('2');
    await page.locator('.load-answer', { hasText: 'Not like this: gross over by 44 kg' }).waitFor();
    await button(/^Put aboard all the same/).click();
    expect(await decides()).toBe('gross 3500 − 3544 = −44 kg');
    // the keyboard is led back to the question, which may scroll it into sight and move what is pressed next
    await page.locator('#load-ask-what:focus').waitFor();
    await button(/^Do this: drain 94 litres from "Fresh water tank"/).click();
    await expect.poll(decides).toBe('gross 3500 − 3450 = 50 kg');
    expect(await item('E-bike').count()).toBe(2);
    await button('Undo').click();
    await button('Undo').click();
    expect(await loadedKg()).toEqual(within);
  });

  it('names a limit of the tank: the plate is reached at so many litres', async () => {
    await showFamily();
    const tank = page.getByRole('slider', { name: /^Fresh water tank/ });
    expect(await page.getByText('At 74 litres the gross plate is reached.').isVisible()).toBe(true);
    await tank.fill('74');
    expect(await decides()).toBe('gross 3500 − 3500 = 0 kg');
    // nothing to spare is tight, never plain
    await page
      .locator('.load-panel .decides.level-tight', { hasText: 'Tight; least spare: gross, 0 kg' })
      .waitFor();
    await tank.press('ArrowRight');
    expect(await decides()).toBe('gross 3500 − 3501 = −1 kg');
  });

  it('counts people by their seat, in stones and pounds too', async () => {
    await button('75 kg on Bench, left').click();
    expect((await loadedKg()).gross).toBe(3155);
    await page.getByRole('textbox', { name: 'Bench, right kg', exact: true }).fill('11 st');
    expect((await loadedKg()).gross).toBe(3225);
    // the driver of the empty weight weighs 75 kg: of a heavier one the rest is listed
    await page.getByRole('textbox', { name: 'Driver kg', exact: true }).fill('95');
    expect((await loadedKg()).gross).toBe(3245);
    expect(await page.getByLabel('Name of item 3').inputValue()).toBe('Driver beyond 75 kg');
    await page.getByRole('textbox', { name: 'Driver kg', exact: true }).fill('');
    await page.getByRole('textbox', { name: 'Bench, right kg', exact: true }).fill('');
    expect((await loadedKg()).gross).toBe(3155);
  });
});

describe('load lists', { timeout: LONG_MS }, () => {
  it('are opened and saved with nothing lost, and kept for the next start', async () => {
    const items = [
      { name: 'Kayak <b>', massKg: 33.25, xM: 2.4567 },
      { name: 'Water', massKg: 40, xM: 2.4, kind: 'fresh-water', place: 'Fresh water tank', litres: 40 },
      { name: 'Bench taken out', massKg: -18, xM: 1.75 },
    ];
    await page.getByLabel('Load list to open').setInputFiles(loadList('trip.json', items));
    await page.getByRole('slider', { name: 'Kayak' }).waitFor();
    const saved = page.waitForEvent('download');
    await button('Save list').click();
    const path = await (await saved).path();
    expect(JSON.parse(readFileSync(path, 'utf8'))).toEqual({ format: 'lanegauge.load', version: 1, items });
    // once the hand has rested, it is kept
    await page.waitForTimeout(800);
    await page.reload();
    await page.getByRole('slider', { name: 'Kayak' }).waitFor({ timeout: SOON_MS });
    expect(await page.getByLabel(/^How far behind the front axle Kayak/).inputValue()).toBe('2.4567');
  });

  it('that cannot be used are refused by the item, and what is aboard stays', async () => {
    await showFamily();
    const bad = loadList('bad.json', [{ name: 'Tent', massKg: '12', xM: 1 }]);
    await page.getByLabel('Load list to open').setInputFiles(bad);
    await page
      .getByRole('alert')
      .filter({ hasText: 'item 1 "Tent": massKg must be a number' })
      .waitFor({ timeout: SOON_MS });
    expect((await loadedKg()).gross).toBe(3526);
  });

  it('are held against the drive: over a plate, the verdict says so and leads back', async () => {
    await showFamily();
    await tab('Drive').click();
    const told = page.locator('.verdict', {
      hasText: 'Loaded as listed it must not leave: gross over by 26 kg',
    });
    await told.waitFor({ timeout: SOON_MS });
    await button('See the load').click();
    expect(await tab('Load').getAttribute('aria-selected')).toBe('true');
    await button(/^Do this: drain 76 litres from/).click();
    await tab('Drive').click();
    await page.getByText('Loaded as listed: 50 kg spare, gross.').waitFor({ timeout: SOON_MS });
  });
});

describe('a card without its empty weight', { timeout: LONG_MS }, () => {
  it('is worked out all the same, as an estimate; one figure of a weighbridge makes it better', async () => {
    const cards = page.getByRole('dialog');
    await button('Cards…').click();
    await cards.locator('summary', { hasText: 'Axle plates and empty weight' }).click();
    for (const name of ['Empty weight, front axle', 'Empty weight, rear axle', 'Unladen mass'])
      await cards.getByRole('textbox', { name }).fill('');
    await cards.getByRole('button', { name: 'Keep this card', exact: true }).click();
    await cards.getByText('Kept. The drive is checked with it.').waitFor({ timeout: SOON_MS });
    await cards.getByRole('button', { name: 'Close', exact: true }).click();
    const estimate = page.getByRole('region', { name: 'An estimate' });
    await estimate.getByText('nothing was weighed').waitFor();
    expect(await page.locator('.load-panel .decides').textContent()).toContain('about ');
    await estimate.getByLabel('The whole vehicle on a weighbridge').fill('3090');
    await estimate.getByRole('button', { name: 'Use it' }).click();
    await estimate.getByText('worked out from the unladen mass on the card').waitFor({ timeout: SOON_MS });
    expect((await loadedKg()).gross).toBe(3090);
    await button('Enter both axles on the card…').click();
    await page.locator('#card-emptyFrontKg:focus').waitFor({ timeout: SOON_MS });
    spend();
  });
});

describe('somebody on a seat', { timeout: LONG_MS }, () => {
  it('is never thrown off the seats, wherever they are let go', async () => {
    await button('75 kg on Bench, left').click();
    const box = await item('Passenger, Bench, left').boundingBox();
    if (!box) throw new Error('the passenger is not drawn');
    await page.mouse.move(box.x + box.width / 2, box.y + box.height - 6);
    await page.mouse.down();
    await page.mouse.move(box.x + 300, box.y, { steps: 5 });
    await page.mouse.up();
    expect(await page.getByLabel('Place of Passenger, Bench, left').inputValue()).toMatch(/^Bench/);
  });
});

describe('the tanks over the day', { timeout: LONG_MS }, () => {
  it('are told stop by stop, and stops can be added and struck out', async () => {
    await showFamily();
    const day = page.getByRole('region', { name: 'The tanks over the day' });
    expect(await day.getByRole('listitem').count()).toBe(4);
    await day.getByText('gross over by 21 kg').waitFor();
    await day.getByRole('button', { name: 'Waste and toilet emptied', exact: true }).click();
    expect(await day.getByRole('listitem').count()).toBe(5);
    await day.getByRole('button', { name: /^Strike out stop 1: Water used up/ }).click();
    expect(await day.getByRole('listitem').count()).toBe(4);
  });
});

describe('a list of three hundred', { timeout: LONG_MS }, () => {
  it('far over is typed in without waiting: the ways out are looked for once the hand rests', async () => {
    const many = Array.from({ length: 300 }, (_, i) => ({
      name: `Thing ${i}`,
      massKg: 2 + (i % 9),
      xM: (i % 50) / 10,
    }));
    await page.getByLabel('Load list to open').setInputFiles(loadList('many.json', many));
    await page
      .getByRole('button', { name: /^Do this/ })
      .first()
      .waitFor({ timeout: SOON_MS });
    const field = page.getByLabel('Kilograms of Thing 299');
    await field.fill('77');
    // the figure counts at once, and the old ways out cannot be taken meanwhile
    expect(
      await page
        .getByRole('button', { name: /^Do this/ })
        .first()
        .isDisabled(),
    ).toBe(true);
    await page.locator('.load-cures button:enabled').first().waitFor({ timeout: SOON_MS });
  });
});

describe('the load sheet', { timeout: LONG_MS }, () => {
  it('is one page with a family of four and with sixty items, and can be signed', async () => {
    await showFamily();
    expect(await pagesPrinted()).toBe(1);
    await page.emulateMedia({ media: 'print' });
    const sheet = page.locator('.load-sheet');
    expect(await sheet.isVisible()).toBe(true);
    expect(await page.locator('.bar').isVisible()).toBe(false);
    for (const said of [
      'OVER: gross by 26 kg. Do not leave like this.',
      'as weighed',
      'Host, signature',
      'Hirer, signature',
    ])
      expect(await sheet.textContent()).toContain(said);
    await page.emulateMedia({ media: null });
    const many = Array.from({ length: 60 }, (_, i) => ({
      name: `Thing ${i + 1}, whatever it may be called in full`,
      massKg: 3,
      xM: i / 12,
    }));
    await page.getByLabel('Load list to open').setInputFiles(loadList('many.json', many));
    await page.getByRole('slider', { name: 'Thing 60' }).waitFor();
    expect(await pagesPrinted()).toBe(1);
  });

  async function pagesPrinted(): Promise<number> {
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    return pdf.match(/\/Type \/Page\b/g)?.length ?? 0;
  }
});
