import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openStores } from '../../../../main/services/stores.ts';
import { worked } from '../../../support/scratch-files.ts';
import { COACH_BUILT, PANEL_VAN } from '../../contract/cards.ts';

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'lanegauge-moving-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

const now = () => new Date('2026-05-01T09:00:00Z');
const open = () => openStores(home, join(home, 'no-samples'), now);
const write = (name: string, value: unknown) => writeFileSync(join(home, name), JSON.stringify(value));
const VEHICLES = [
  { id: 'Wren_2', card: PANEL_VAN },
  { id: 'heron', card: COACH_BUILT },
];
const LOADS = [{ vehicleId: 'Wren_2', items: [{ name: 'Kayak', massKg: 30, xM: 5.5 }] }];
const gpx = (lat: number) =>
  `<gpx xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Coast ${lat}</name><trkseg><trkpt lat="${lat}" lon="9"/><trkpt lat="${lat}" lon="9.01"/></trkseg></trk></gpx>`;

function writeFormer(): void {
  write('fleet.json', { format: 'lanegauge.fleet', version: 1, vehicles: VEHICLES });
  write('loads.json', { format: 'lanegauge.loads', version: 1, loads: LOADS });
  const entries = ['coast.gpx', 'gone.gpx'].map((name, i) => ({
    id: `abcdefg${i}`,
    use: 'drive',
    name,
    path: join(home, name),
    openedAt: '2026-01-01T00:00:00Z',
    leaveAt: '2026-06-12T09:30',
  }));
  write('recents.json', { format: 'lanegauge.recents', version: 1, entries });
  writeFileSync(join(home, 'coast.gpx'), gpx(54));
}

describe('what was kept before there was a library', () => {
  it('moves into it by itself, in its order, and its files stay as they were', async () => {
    writeFormer();
    const before = ['fleet.json', 'loads.json', 'recents.json'].map((name) => readFileSync(join(home, name)));
    const stores = await open();
    await stores.moveDrives();
    for (const each of [stores, await open()]) {
      expect(each.fleet.current()).toEqual(VEHICLES);
      expect(each.loads.current()).toEqual(LOADS);
      const drives = each.library.list('drive');
      expect(drives).toMatchObject([
        { versions: [{ body: { trackName: 'Coast 54', leaveAt: '2026-06-12T09:30' } }] },
      ]);
      const bytes = await each.library.readBytes('gpx', drives[0]!.versions[0]!.body.gpx);
      expect(Buffer.from(worked(bytes)).toString()).toBe(gpx(54));
    }
    expect(
      ['fleet.json', 'loads.json', 'recents.json'].map((name) => readFileSync(join(home, name))),
    ).toEqual(before);
    expect(stores.recents.list()).toHaveLength(2);
  });

  it('moves once: what is deleted afterwards does not come back', async () => {
    writeFormer();
    const stores = await open();
    await stores.moveDrives();
    worked(await stores.fleet.save([VEHICLES[1]!]));
    worked(await stores.loads.save('Wren_2', []));
    worked(await stores.library.remove(stores.library.list('drive')[0]!));
    const again = await open();
    await again.moveDrives();
    expect([again.fleet.current(), again.loads.current(), again.library.list('drive')]).toEqual([
      [VEHICLES[1]],
      [],
      [],
    ]);
  });

  it('moves again to the same records where it was cut off, and by two programs at once', async () => {
    writeFormer();
    await Promise.all([open(), open()]);
    for (const name of ['moved-in.json', 'moved-in.json.bak']) rmSync(join(home, name));
    rmSync(join(home, 'library', 'records', 'vehicle-heron'), { recursive: true });
    const stores = await open();
    expect([stores.fleet.current(), stores.loads.current()]).toEqual([VEHICLES, LOADS]);
    expect(stores.library.list('vehicle').every(({ versions }) => versions.length === 1)).toBe(true);
  });

  it('is shown from its files where the library cannot be written', async () => {
    writeFormer();
    writeFileSync(join(home, 'library'), 'a file where a folder should be');
    const stores = await open();
    expect([stores.fleet.current(), stores.loads.current()]).toEqual([VEHICLES, LOADS]);
    const refused = await stores.fleet.save([]);
    expect(refused.ok ? '' : refused.error.message).toMatch(/library in .* could not be written/);
    rmSync(join(home, 'library'));
    expect((await open()).fleet.current()).toEqual(VEHICLES);
  });

  it('an emptied fleet stays empty, at every start', async () => {
    write('fleet.json', { format: 'lanegauge.fleet', version: 1, vehicles: [] });
    for (let start = 0; start < 2; start++) expect((await open()).fleet.current()).toEqual([]);
  });
});

describe('a fleet in a library that two computers write', () => {
  it('shows both versions of a card changed at once, and deleting one keeps the other', async () => {
    writeFormer();
    const { fleet, library } = await open();
    const [item] = library.list('vehicle').filter(({ id }) => id === 'vehicle-heron');
    const body = item!.versions[0]!.body;
    for (const heightM of [2.9, 3.2])
      worked(
        await library.put({
          kind: 'vehicle',
          id: 'vehicle-heron',
          body: { ...body, card: { ...COACH_BUILT, heightM } },
          over: item!.heads,
        }),
      );
    const shown = fleet.current();
    expect(shown.map(({ card }) => card.name)).toEqual([
      PANEL_VAN.name,
      COACH_BUILT.name,
      `${COACH_BUILT.name} (other version)`,
    ]);
    expect(fleet.notices().join()).toContain('changed on two computers at once');
    worked(await fleet.save([shown[0]!, shown[2]!]));
    expect(fleet.notices()).toEqual([]);
    expect(fleet.current().map(({ id, card }) => [id, card.name, card.heightM])).toEqual([
      ['Wren_2', PANEL_VAN.name, PANEL_VAN.heightM],
      ['heron', COACH_BUILT.name, shown[2]!.card.heightM],
    ]);
  });
});
