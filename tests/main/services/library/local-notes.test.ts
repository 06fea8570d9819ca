import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { checkFromFiles } from '../../../../main/services/check-drive.ts';
import type { YardNamed } from '../../../../main/services/library/local-notes.ts';
import { openLibrary } from '../../../../main/services/library/open-library.ts';
import { worked } from '../../../support/scratch-files.ts';

const SAMPLE = join(import.meta.dirname, '../../../../sample-routes');
const now = () => new Date('2026-11-01T09:00:00Z');

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'noted-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

function check(yard: YardNamed) {
  const request = {
    routePath: join(SAMPLE, 'drives', 'clear.gpx'),
    mapPaths: [join(SAMPLE, 'district.osm.pbf')],
    shelf: home,
    vehiclePath: join(SAMPLE, 'vehicles', 'coach-built-7.4.json'),
    country: 'GB',
    yard,
  };
  return checkFromFiles(request, { now });
}

describe('a check with the notes of a library', () => {
  it('counts what the firm measured; both figures of a note changed in two places', async () => {
    const at = { lat: 47.499642, lon: -19.985473 };
    const folder = join(home, 'yard');
    const library = await openLibrary({ folder, dataFolder: home, now });
    const note = { kind: 'note', id: 'note-1a2b3c4d' } as const;
    const body = { at, say: 'Low wires', by: 'AB', seen: '2026-10-01' };
    const kept = worked(await library.put({ ...note, body: { ...body, heightM: 4 } }));
    worked(await library.put({ ...note, body: { ...body, heightM: 2.6 }, over: [] }));
    expect(kept.versions).toHaveLength(1);

    const { report } = worked(await check({ dataFolder: join(home, 'other'), folder }));
    expect(report.verdict).toBe('barred');
    expect(report.findings.find(({ note: by }) => by === note.id)).toMatchObject({
      level: 'barred',
      subject: 'height',
      limit: { value: 2.6 },
    });
  });

  it('is refused where the folder named is not there', async () => {
    const refused = await check({ dataFolder: home, folder: join(home, 'nowhere') });
    expect(refused.ok ? '' : refused.error.message).toContain('there is no such folder');
  });
});
