import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, describe, expect, it } from 'vitest';
import { makeDistrict } from '../../../sample-routes/draw/district.ts';
import { makeDrives } from '../../../sample-routes/draw/drives/make-drives.ts';
import { writeDrive } from '../../../sample-routes/write/write-drive.ts';
import { writeOsmGz } from '../../../sample-routes/write/write-osm-xml.ts';
import { writePbf } from '../../../sample-routes/write/write-pbf.ts';
import { type MapFile, readDistrict, SAMPLES } from '../read-district.ts';

const folder = mkdtempSync(join(tmpdir(), 'district-'));
afterAll(() => rmSync(folder, { recursive: true }));

// packed bytes may differ between versions of zlib, so it is the content that is compared
describe('The sample', () => {
  const district = makeDistrict();

  it('is drawn again as it lies in the folder', async () => {
    const file = join(folder, 'again.osm.pbf');
    writeFileSync(file, writePbf(district));
    // as text: to print how two maps differ would take a minute
    expect(written(await readDistrict(file)) === written(await readDistrict())).toBe(true);
  });

  it('is written as it was drawn: nodes, ways and relations', async () => {
    const { nodes, ways, relations } = await readDistrict();
    expect(nodes.size).toBe(district.nodes.length);
    expect(
      district.nodes.every(({ id, lat, lon, tags }) => {
        const read = nodes.get(id);
        return (
          read !== undefined &&
          Math.abs(read.lat - lat) < 1e-7 &&
          Math.abs(read.lon - lon) < 1e-7 &&
          same(read.tags, tags)
        );
      }),
    ).toBe(true);
    const plain = ways.map(({ id, refs, tags }) => ({ id, refs, tags }));
    expect(JSON.stringify(plain) === JSON.stringify(district.ways)).toBe(true);
    expect(relations.map(({ id, tags }) => ({ id, tags }))).toEqual(
      district.relations.map(({ id, tags }) => ({ id, tags })),
    );
  });

  it('comes out as the same XML', () => {
    const kept = gunzipSync(readFileSync(resolve(SAMPLES, 'district.osm.gz'))).toString('utf8');
    expect(gunzipSync(writeOsmGz(district)).toString('utf8') === kept).toBe(true);
  });

  it('comes out with the same drives', () => {
    for (const [name, drive] of makeDrives(district))
      expect(readFileSync(resolve(SAMPLES, 'drives', name), 'utf8') === writeDrive(drive), name).toBe(true);
  });
});

function written({ nodes, ways, relations }: MapFile): string {
  return JSON.stringify([[...nodes.values()], ways, relations]);
}

function same(a: Readonly<Record<string, string>>, b: Readonly<Record<string, string>>): boolean {
  return JSON.stringify(Object.entries(a).sort()) === JSON.stringify(Object.entries(b).sort());
}
