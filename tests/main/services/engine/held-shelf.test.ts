import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { CALLS } from '../../../../main/contract/calls.ts';
import { createHandlers } from '../../../../main/services/engine/handlers.ts';
import { openShelfFor } from '../../../../main/services/engine/open-shelf-for.ts';
import { listMaps } from '../../../../main/services/shelf/list-maps.ts';
import { mapFolder } from '../../../../main/services/shelf/shelf-folder.ts';
import { importMap } from '../../../../main/services/shelf/shelf-work.ts';
import { COACH_BUILT } from '../../../support/coach-built.ts';
import { worked } from '../../../support/scratch-files.ts';
import { importByHand } from '../../../support/shelf/import-by-hand.ts';

const NEVER = new AbortController().signal;
const hooks = { signal: NEVER, onProgress: () => {}, lookUp: () => {} };

let home: string;
let shelf: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'held-'));
  shelf = join(home, 'shelf');
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

/** A lane of 2 km northwards, with these tags. */
async function putLane(tags: string, name = 'Lane', fromLat = 54): Promise<void> {
  const path = join(home, `${name}.osm`);
  const nodes = Array.from(
    { length: 21 },
    (_, i) => `<node id="${i + 1}" lat="${fromLat + i * 0.0009}" lon="9"/>`,
  );
  const refs = Array.from({ length: 21 }, (_, i) => `<nd ref="${i + 1}"/>`);
  writeFileSync(
    path,
    `<osm version="0.6">${nodes.join('')}<way id="7">${refs.join('')}<tag k="highway" v="residential"/><tag k="name" v="Mill Lane"/>${tags}</way></osm>`,
  );
  worked(
    await importMap(
      { shelf, importPart: importByHand, now: () => new Date(0) },
      { name, files: [{ path, name: path, stays: true }], origin: { by: 'file' } },
      hooks,
    ),
  );
}

function drive(): { path: string; name: string } {
  const path = join(home, 'lane.gpx');
  const points = Array.from({ length: 19 }, (_, i) => `<trkpt lat="${54.0004 + i * 0.0009}" lon="9"/>`);
  writeFileSync(
    path,
    `<gpx version="1.1" creator="t"><trk><name>To the mill</name><trkseg>${points.join('')}</trkseg></trk></gpx>`,
  );
  return { path, name: 'lane.gpx' };
}

describe('the shelf before and after a change', () => {
  const asked = () => ({
    vehicle: COACH_BUILT,
    units: 'metric' as const,
    made: '',
    drives: [drive()],
  });

  it('tells which limit is new on a drive', async () => {
    const handlers = createHandlers();
    await putLane('');
    await handlers.holdShelf({ shelf }, hooks);
    await putLane('<tag k="maxheight" v="2.8"/>');
    const compared = worked(await handlers.compareHeld({ shelf, asked: asked() }, hooks));
    expect(CALLS.mapChanges.value.parse(compared).drives).toMatchObject([
      { name: 'To the mill', compared: true, differences: [{ kind: 'new', level: 'barred' }] },
    ]);
    // told once
    expect(worked(await handlers.compareHeld({ shelf, asked: asked() }, hooks)).drives).toEqual([]);
  });

  it('tells nothing where the new map says the same', async () => {
    const handlers = createHandlers();
    await putLane('<tag k="maxheight" v="2.8"/>');
    await handlers.holdShelf({ shelf }, hooks);
    await putLane('<tag k="maxheight" v="2.8 m"/>');
    const compared = worked(await handlers.compareHeld({ shelf, asked: asked() }, hooks));
    expect(compared.drives).toMatchObject([{ compared: true, differences: [] }]);
  });

  it('damage that is met when a drive is opened is shown in the list from then on', async () => {
    const handlers = createHandlers();
    await putLane('');
    const folder = mapFolder(shelf, 'Lane');
    const part = join(folder, 'part-1-1.shelf');
    const bytes = readFileSync(part);
    bytes[30]! ^= 0xff;
    writeFileSync(part, bytes);
    expect(await listMaps(shelf)).toMatchObject([{ state: 'ready' }]);
    const summary = worked(await handlers.openMap({ shelf, about: drive() }, hooks));
    expect(summary.shelf?.damaged).toEqual(['Lane']);
    expect(await listMaps(shelf)).toMatchObject([{ state: 'damaged' }]);
  });

  it('opens about a drive, says how far it covers it, and draws its tiles', async () => {
    const handlers = createHandlers();
    await putLane('');
    const summary = worked(await handlers.openMap({ shelf, about: drive() }, hooks));
    expect(CALLS.openMap.value.parse(summary)).toMatchObject({
      name: 'Lane',
      roads: 1,
      shelf: { maps: ['Lane'], bare: [], mainRoadsOnly: false, damaged: [] },
    });
    const followed = worked(await handlers.openDrive({ driveId: 'd', file: drive() }, hooks));
    expect(followed.match.offMapM).toBeLessThan(1);
    const tile = worked(await handlers.tile({ z: 14, x: 8601, y: 5241 }, hooks));
    expect(CALLS.tile.value.parse(tile).z).toBe(14);
  });

  it('is refused in a sentence while it is empty', async () => {
    expect(await createHandlers().openMap({ shelf }, hooks)).toMatchObject({
      ok: false,
      error: { code: 'shelf.empty' },
    });
  });
});

it('of a shelf of maps far apart that is opened about no drive, the one with most roads is looked at first', async () => {
  await putLane('', 'North', 58);
  await putLane('', 'South', 48);
  const only = worked(await openShelfFor(shelf, undefined, async () => {}));
  only.shelf.close();
  expect(only.summary.bounds).toMatchObject({ south: 48 });
  expect(only.summary.bounds?.north).toBeGreaterThan(58);
  const look = only.summary.shelf?.lookAt;
  expect((look?.north ?? 90) - (look?.south ?? 0)).toBeLessThan(0.1);
});

describe('a plan on the shelf', () => {
  const plan = (fromLat: number, toLat: number) => ({
    newId: 'p',
    places: [fromLat, toLat].map((lat) => ({ lat, lon: 9, stop: true })),
    vehicle: COACH_BUILT,
    made: '2027-06-12T09:30:00Z',
  });

  it('tells the maps that its drive uses, not those of the drive it was begun over', async () => {
    await putLane('');
    await putLane('', 'Other', 55);
    const handlers = createHandlers();
    worked(await handlers.openMap({ shelf, about: drive() }, hooks));
    const planned = worked(await handlers.planDrive(plan(55.001, 55.015), hooks));
    expect(planned.drive.shelf?.maps).toEqual(['Other']);
    expect(planned.drive.shelf?.sources).toHaveLength(1);
    expect(() => CALLS.planDrive.value.parse(planned)).not.toThrow();
  });

  it('names a damaged map before the way that it does not find, and the names it cannot look up', async () => {
    await putLane('');
    await putLane('', 'Other', 55);
    const part = join(mapFolder(shelf, 'Other'), 'part-1-1.shelf');
    writeFileSync(part, readFileSync(part).subarray(0, 100));
    const handlers = createHandlers();
    worked(await handlers.openMap({ shelf, about: drive() }, hooks));
    const planned = await handlers.planDrive(plan(54.001, 55.015), hooks);
    expect(planned.ok ? '' : planned.error.message).toMatch(
      /^The map "Other" is damaged: .* Mend it under Shelf.* Place 2/,
    );
    const found = worked(await handlers.findPlaces({ text: 'Nowhere' }, hooks));
    expect(found.notSearched).toMatch(/^The map "Other" is damaged: names, .* were not searched\. Mend it/);
    expect(() => CALLS.findPlaces.value.parse(found)).not.toThrow();
  });
});
