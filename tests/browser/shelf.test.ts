import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { fastPace } from '../support/map-server/fast-pace.ts';
import { type ServedOverpass, serveOverpass } from '../support/map-server/serve-overpass.ts';
import { straightMap } from '../support/map-server/straight-map.ts';
import { gpx, renamedDrive } from './support/files.ts';
import { findingsTold, SAMPLE_TOLD, SOON_MS, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';
import { type States, walkStates } from './support/walk-states.ts';

let watched: WatchedPage;

withSampleWindow(
  (opened) => {
    watched = opened;
  },
  { pace: fastPace() },
);

const STRAIGHT = straightMap();
const [LINE] = STRAIGHT.route.segments;
const DUE_EAST = gpx(
  'east.gpx',
  `<gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Due east</name><trkseg>${[
    ...(LINE?.lat ?? []),
  ]
    .map((lat, i) => `<trkpt lat="${lat}" lon="${LINE?.lon[i]}"/>`)
    .join('')}</trkseg></trk></gpx>`,
);

const press = (page: Page, name: string | RegExp) =>
  page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name }).click();
const says = (page: Page, text: string | RegExp) =>
  page.getByText(text).first().waitFor({ timeout: SOON_MS });

async function openAlone(page: Page, file: { name: string; mimeType: string; buffer: Buffer }) {
  await page.keyboard.press('Escape');
  await press(page, 'Open…');
  await page.locator('dialog input[type=file]').setInputFiles(file);
}

/** From an empty shelf to a drive whose map was fetched, each screen on the way. */
const states = (server: ServedOverpass): States => [
  [
    'the first run',
    (page) => says(page, 'For your own drives a map is fetched or imported once and then kept.'),
  ],
  [
    'an empty shelf',
    async (page) => {
      await press(page, 'Shelf');
      await says(page, 'Nothing is on your shelf yet.');
    },
  ],
  [
    'a map taken in',
    async (page) => {
      await page
        .locator('dialog input[type=file]')
        .first()
        .setInputFiles(resolve('sample-routes/district.osm.pbf'));
      await says(page, /^district is on your shelf, with 2,031 roads/);
      await page.getByRole('heading', { name: 'district', level: 3 }).waitFor();
    },
  ],
  [
    'asked whether to remove it',
    async (page) => {
      await press(page, 'Look for damage district');
      await says(page, 'All of district was read: it is whole.');
      await press(page, 'Remove… district');
      await page.locator('button:focus', { hasText: 'Keep it' }).waitFor();
    },
  ],
  [
    'a drive alone, on the shelf',
    async (page) => {
      await press(page, 'Keep it');
      await openAlone(page, renamedDrive('barred', 'alone.gpx', 'Alone'));
      await says(page, 'From your shelf: district, data of 2026-05-01');
      await findingsTold(page, SAMPLE_TOLD);
    },
  ],
  [
    'an address that is none',
    async (page) => {
      await press(page, 'Settings');
      const address = page.getByLabel('Along a drive: a server that answers Overpass questions');
      await address.fill('overpass');
      await says(page, /That is no server’s address/);
    },
  ],
  [
    'a drive that the shelf lacks',
    async (page) => {
      const address = page.getByLabel('Along a drive: a server that answers Overpass questions');
      await address.fill(server.address.href);
      await address.blur();
      await openAlone(page, DUE_EAST);
      await says(page, /^None of this drive of 21\.\d km is on your shelf/);
      await findingsTold(page, /None of this drive/);
      await says(page, /^about .* MB|^about .* kB/);
    },
  ],
  [
    'asked for the list of regions',
    async (page) => {
      await press(page, 'Fetch whole regions…');
      await page.getByRole('button', { name: 'Yes, ask for the list' }).waitFor();
      expect(await page.locator('[aria-current="step"]').textContent()).toContain('The list of regions');
    },
  ],
  [
    'asked to fetch along the line, with nothing sent yet',
    async (page) => {
      await press(page, 'No, send nothing');
      await press(page, 'Fetch along the line…');
      await says(page, 'Asked of it today');
      expect(server.asked).toEqual([]);
    },
  ],
  [
    'the map has come',
    async (page) => {
      await press(page, 'Yes, fetch it');
      await says(page, /^The map has come: Along Due east is on your shelf\./);
      await says(page, /^From your shelf: Along Due east/);
      expect(server.questions().length).toBeGreaterThan(0);
      await page.locator('.map-offer').waitFor({ state: 'detached' });
    },
  ],
  [
    'a map removed',
    async (page) => {
      await press(page, 'Shelf');
      await press(page, 'Remove… district');
      await press(page, 'Remove it');
      await says(page, 'district was removed from your shelf.');
      expect(await page.locator('.shelf-map').count()).toBe(1);
    },
  ],
];

it('the shelf, from the first run to a drive whose map was fetched, by day and by night', {
  timeout: 240_000,
}, async () => {
  await walkStates(watched, states(await serveOverpass(STRAIGHT.map)), [390]);
});
