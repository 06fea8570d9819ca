import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { fleetFileSchema } from '../../../../main/contract/fleet.ts';
import { readSampleFleet } from '../../../../main/services/fleet/sample-fleet.ts';
import { fleetIn } from '../../../support/library/kept-in.ts';
import { COACH_BUILT, PANEL_VAN } from '../../contract/cards.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lanegauge-fleet-'));
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

const now = () => new Date('2026-05-01T09:00:00Z');
const first = [{ id: 'heron', card: COACH_BUILT }];

describe('the fleet', () => {
  it('starts with the sample vehicles and writes nothing until it is changed', async () => {
    const fleet = await fleetIn(folder, first, now);
    expect(fleet.current()).toEqual(first);
    expect(await readdir(folder)).toEqual([]);
  });

  it('keeps an emptied list empty', async () => {
    await (await fleetIn(folder, first, now)).save([]);
    expect((await fleetIn(folder, first, now)).current()).toEqual([]);
  });

  it('that was damaged is set aside and the sample vehicles stand in', async () => {
    await writeFile(
      join(folder, 'fleet.json'),
      JSON.stringify({
        format: 'lanegauge.fleet',
        version: 1,
        vehicles: [{ id: 'x', card: { ...COACH_BUILT, heightM: -1 } }],
      }),
    );
    const fleet = await fleetIn(folder, first, now);
    expect(fleet.current()).toEqual(first);
    expect(fleet.notices().join()).toContain('vehicles.0.card.heightM');
    expect((await readdir(folder)).join()).toContain('fleet.json.damaged-');
  });

  it('of a newer version is set aside, not cut down to what is understood', async () => {
    await writeFile(
      join(folder, 'fleet.json'),
      JSON.stringify({ format: 'lanegauge.fleet', version: 2, vehicles: [] }),
    );
    expect((await fleetIn(folder, first, now)).notices().join()).toContain('version');
    expect((await readdir(folder)).join()).toContain('fleet.json.damaged-');
  });

  it('holds no two vehicles of one id', () => {
    const vehicles = [...first, ...first];
    expect(fleetFileSchema.safeParse({ format: 'lanegauge.fleet', version: 1, vehicles }).success).toBe(
      false,
    );
  });
});

describe('the sample vehicles', () => {
  it('carry their file names as ids; one that cannot be used is left out with a word', async () => {
    const cards = join(folder, 'vehicles');
    await mkdir(cards);
    await writeFile(join(cards, 'coach-built-7.4.json'), JSON.stringify(COACH_BUILT));
    await writeFile(join(cards, 'van.json'), JSON.stringify(PANEL_VAN));
    await writeFile(join(cards, 'broken.json'), '{');
    await writeFile(join(cards, 'readme.txt'), '');
    const { vehicles, notices } = await readSampleFleet(cards);
    expect(vehicles.map(({ id }) => id)).toEqual(['coach-built-7-4', 'van']);
    expect(notices).toHaveLength(1);
  });

  it('that are missing are said to be', async () => {
    expect((await readSampleFleet(join(folder, 'none'))).notices.join()).toContain('missing');
  });
});
