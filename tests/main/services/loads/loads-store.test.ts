import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { loadsIn } from '../../../support/library/kept-in.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lanegauge-loads-'));
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

const now = () => new Date('2026-05-01T09:00:00Z');
const open = () => loadsIn(folder, now, (id) => (id === 'heron' ? 'Heron 7.4' : undefined));
const BIKES = [{ name: 'Two e-bikes', massKg: 50, xM: 6.8, place: 'rack' }];
const WATER = [
  { name: 'Water', massKg: 100, xM: 2.4, kind: 'fresh-water', place: 'Tank', litres: 100 } as const,
];

describe('the loads of a fleet', () => {
  it('are none at first, and nothing is written', async () => {
    expect((await open()).current()).toEqual([]);
    expect(await readdir(folder)).toEqual([]);
  });

  it('are kept a vehicle each, whichever is written first', async () => {
    const loads = await open();
    await Promise.all([loads.save('heron', BIKES), loads.save('wren', WATER)]);
    expect((await open()).current()).toEqual([
      { vehicleId: 'heron', items: BIKES },
      { vehicleId: 'wren', items: WATER },
    ]);
  });

  it('with nothing aboard are forgotten; the list before stays in the library', async () => {
    const loads = await open();
    await loads.save('heron', BIKES);
    await loads.save('heron', []);
    expect((await open()).current()).toEqual([]);
    const kept = await readdir(join(folder, 'library', 'records', 'load-heron'));
    const [first = ''] = kept.filter((name) => name.startsWith('first-'));
    const text = await readFile(join(folder, 'library', 'records', 'load-heron', first), 'utf8');
    expect(JSON.parse(text).body.items).toEqual(BIKES);
  });

  it('of a vehicle that is in no fleet just now stay: it may come back', async () => {
    await (await open()).save('gone', BIKES);
    await (await open()).save('heron', WATER);
    expect((await open()).current()).toContainEqual({ vehicleId: 'gone', items: BIKES });
  });

  it('in a damaged file are set aside, with a word', async () => {
    await writeFile(join(folder, 'loads.json'), '{"format":"lanegauge.loads","version":1,"loads":[{}]}');
    const loads = await open();
    expect(loads.notices().join()).toContain('set aside');
    expect((await readdir(folder)).some((name) => name.startsWith('loads.json.damaged-'))).toBe(true);
  });
});
