import { spawnSync } from 'node:child_process';
import { mkdir, mkdtemp, readdir, rm, symlink, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../../../main/contract/default-settings.ts';
import { OWN_MARK } from '../../../../main/services/files/owner-mark.ts';
import { passingName, sweepPassing } from '../../../../main/services/files/passing-files.ts';
import { openStores } from '../../../../main/services/stores.ts';
import { sweepUploads } from '../../../../main/services/uploads/uploads-folder.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lanegauge-left-'));
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

/** The mark of a process that has ended, and one of another computer. */
const [host] = OWN_MARK.split('-');
const ended = `${host}-${spawnSync(process.execPath, ['-e', '']).pid}`;
const elsewhere = `00000000-${ended.split('-')[1]}`;
const HOUR_MS = 3_600_000;
const UUID = '2f1d0c9e-8b7a-4c6d-9e5f-0a1b2c3d4e5f';

describe('a data folder that cannot be made', () => {
  // in /proc the system refuses in a way of its own
  const places = process.platform === 'linux' ? ['/dev/null/data', '/proc/nowhere/data'] : [];
  it.each(places)('is told at the start, and every save ends at once: %s', async (place) => {
    const stores = await openStores(place, folder, () => new Date());
    expect(stores.notices().join()).toMatch(
      /Nothing that you change can be kept: the folder .* LANEGAUGE_HOME/,
    );
    const saved = await stores.settings.save(DEFAULT_SETTINGS);
    expect(saved.ok ? '' : saved.error.message).toContain('could not be saved in');
  });
});

describe('a start', () => {
  it('sweeps what a killed program left half written, and nothing else', async () => {
    const stay = [
      'fleet.json',
      'fleet.json.bak',
      'fleet.json.damaged-2026-05-01T09-00-00-000Z-1a2b3c4d',
      `fleet.json.${UUID}`,
      `fleet.json.${elsewhere}-${UUID}`,
      passingName('fleet.json'),
    ];
    const goes = [`fleet.json.${ended}-${UUID}`, `fleet.json.bak.${ended}-${UUID}`];
    for (const name of [...stay, ...goes]) await writeFile(join(folder, name), '{');
    const now = Date.now();
    await sweepPassing(folder, now);
    // just written: whoever looks after the crash may want to see it
    expect(await readdir(folder)).toHaveLength(stay.length + goes.length);
    for (const name of [...stay, ...goes])
      await utimes(join(folder, name), new Date(now - HOUR_MS), new Date(now - HOUR_MS));
    await sweepPassing(folder, now);
    expect((await readdir(folder)).sort()).toEqual([...stay].sort());
  });

  it('sweeps the copies of a killed program, not those of a living one', async () => {
    const living = `lanegauge-uploads-${OWN_MARK}-abc123`;
    const stay = [living, `lanegauge-uploads-${elsewhere}-abc123`, 'lanegauge-two-abc123', 'link'];
    const goes = `lanegauge-uploads-${ended}-abc123`;
    for (const name of [...stay.slice(0, 3), goes]) await mkdir(join(folder, name));
    await writeFile(join(folder, goes, 'copy'), 'drive');
    await symlink(join(folder, living), join(folder, 'link'));
    await symlink(join(folder, living), join(folder, `lanegauge-uploads-${ended}-link00`));
    await sweepUploads(folder);
    expect((await readdir(folder)).sort()).toEqual([...stay, `lanegauge-uploads-${ended}-link00`].sort());
  });
});
