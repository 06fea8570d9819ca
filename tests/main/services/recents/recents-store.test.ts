import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openRecents } from '../../../../main/services/recents/recents-store.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'recents-'));
});
afterEach(() => rm(folder, { recursive: true }));

const now = () => new Date('2027-06-01T00:00:00Z');
const open = () => openRecents(folder, now);
const DRIVE = {
  path: '/drives/coast.gpx',
  name: 'coast.gpx',
  use: 'drive',
  passing: false,
  bytes: 9,
} as const;
const MAP = { name: 'vale.osm.pbf', source: { kind: 'sample', id: 'vale' } } as const;

describe('a drive opened before', () => {
  it('is listed with the map it was opened on and its leave time, after a restart too', async () => {
    const first = await open();
    const id = await first.add({ ...DRIVE, map: MAP });
    const source = { kind: 'recent', id: id ?? '' } as const;
    await first.keepLeaveAt(source, '2027-06-12T09:30');
    const again = await open();
    expect(again.list()).toMatchObject([{ name: 'coast.gpx', map: MAP, leaveAt: '2027-06-12T09:30' }]);
    expect(again.leaveAtOf(source)).toBe('2027-06-12T09:30');
  });

  it('keeps its leave time when it is opened again, on another map, until none is chosen', async () => {
    const recents = await open();
    const id = await recents.add({ ...DRIVE, map: MAP });
    const source = { kind: 'recent', id: id ?? '' } as const;
    await recents.keepLeaveAt(source, '2027-06-12T09:30');
    await recents.add({ ...DRIVE, map: { name: 'other.osm.pbf' } });
    expect(recents.list()).toMatchObject([{ map: { name: 'other.osm.pbf' }, leaveAt: '2027-06-12T09:30' }]);
    await recents.keepLeaveAt(source, undefined);
    expect((await open()).leaveAtOf(source)).toBeUndefined();
  });

  it('keeps the day planned for it, until none is', async () => {
    const recents = await open();
    const id = await recents.add({ ...DRIVE, map: MAP });
    const day = { stops: [{ name: 'Quay', lat: 54, lon: 9, stayMin: 20 }], homeBy: '2027-06-12T17:00' };
    for (const source of [
      { kind: 'recent', id: id ?? '' } as const,
      { kind: 'sample', id: 'tight' } as const,
    ]) {
      await recents.keepDay(source, day);
      await recents.add({ ...DRIVE, map: MAP });
      expect((await open()).dayOf(source)).toEqual(day);
      await recents.keepDay(source, undefined);
      expect((await open()).dayOf(source)).toBeUndefined();
    }
  });

  it('that comes with the program keeps its leave time without being listed', async () => {
    const source = { kind: 'sample', id: 'barred' } as const;
    await (await open()).keepLeaveAt(source, '2027-06-12T09:30');
    const again = await open();
    expect([again.list(), again.leaveAtOf(source)]).toEqual([[], '2027-06-12T09:30']);
  });

  it('from a list written before maps and times were kept is still there', async () => {
    const entry = {
      id: 'abcdefgh',
      use: 'drive',
      name: 'old.gpx',
      path: '/old.gpx',
      openedAt: '2026-01-01T00:00:00Z',
    };
    const file = { format: 'lanegauge.recents', version: 1, entries: [entry] };
    await writeFile(join(folder, 'recents.json'), JSON.stringify(file));
    expect((await open()).list()).toMatchObject([{ name: 'old.gpx' }]);
  });
});
