import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDrives } from '../../../../main/services/library/add-drives.ts';
import type { Library } from '../../../../main/services/library/library.ts';
import { openLibrary } from '../../../../main/services/library/open-library.ts';
import { drivesNear } from '../../../../main/services/yard/drives-near.ts';
import { worked } from '../../../support/scratch-files.ts';

const SAMPLE = join(import.meta.dirname, '../../../../sample-routes/drives');
const now = () => new Date('2027-06-12T09:30:00Z');

let home: string;
let library: Library;
/** A place on the sample's clear drive. */
let onIt: { lat: number; lon: number };

beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), 'near-'));
  library = await openLibrary({ folder: join(home, 'library'), dataFolder: home, now });
  const bytes = readFileSync(join(SAMPLE, 'clear.gpx'));
  worked(await addDrives(library, { bytes, name: 'clear.gpx' }));
  const points = [...bytes.toString().matchAll(/<trkpt lat="([^"]+)" lon="([^"]+)"/g)];
  const [, lat, lon] = points[points.length >> 1] ?? [];
  onIt = { lat: Number(lat), lon: Number(lon) };
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

async function near(place: { lat: number; lon: number }, radiusM: number) {
  const drives = library.list('drive').map(({ id, versions: [version] }) => {
    const { gpx = '', file = '', track = 1 } = version?.body ?? {};
    return {
      id,
      name: 'The drive',
      gpx,
      track,
      file: { path: library.pathOf('gpx', gpx), name: file, sha256: gpx },
    };
  });
  const hooks = { signal: new AbortController().signal, onProgress: () => {} };
  return worked(await drivesNear({ library, drives, kept: home }, { ...place, radiusM }, hooks));
}

describe('the drives near a place', () => {
  it('are those that pass it, from the file the first time and from what is kept of it after', async () => {
    expect((await near(onIt, 200)).drives).toHaveLength(1);
    expect((await near({ lat: onIt.lat + 0.1, lon: onIt.lon }, 200)).drives).toEqual([]);
    const [kept = ''] = readdirSync(join(home, 'lines'));
    // half of one, as after a loss of power, is made anew
    writeFileSync(join(home, 'lines', kept), '[[54.1,');
    expect((await near(onIt, 200)).drives).toHaveLength(1);
  });

  it('leave out and name the one whose file is gone', async () => {
    rmSync(join(home, 'lines'), { recursive: true });
    rmSync(library.pathOf('gpx', library.list('drive')[0]?.versions[0]?.body.gpx ?? ''));
    const { drives, unread } = await near(onIt, 200);
    expect(drives).toEqual([]);
    expect(unread).toEqual([expect.stringMatching(/^The drive: /)]);
  });
});
