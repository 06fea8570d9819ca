import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkFromFiles } from '../../../../main/services/check-drive.ts';
import { importMap } from '../../../../main/services/shelf/shelf-work.ts';
import { type MapFile, readDistrict, SAMPLES } from '../../../sample-routes/read-district.ts';
import { pbfFile } from '../../../support/pbf-file.ts';
import { worked } from '../../../support/scratch-files.ts';
import { importByHand } from '../../../support/shelf/import-by-hand.ts';

const hooks = { signal: new AbortController().signal, onProgress: () => {} };
const home = mkdtempSync(join(tmpdir(), 'neighbours-'));
const shelf = join(home, 'shelf');
afterAll(() => rmSync(home, { recursive: true, force: true }));

/**
 * An extract of the district on one side of a meridian, as servers cut them: every way with a node there, complete, and
 * every relation of such a way.
 */
function cutOut({ nodes, ways, relations }: MapFile, isIn: (lon: number) => boolean): Uint8Array {
  const has = (ref: number) => isIn(nodes.get(ref)?.lon ?? Number.NaN);
  const kept = ways.filter(({ refs }) => refs.some(has));
  const ids = new Set(kept.map(({ id }) => id));
  const used = new Set(kept.flatMap(({ refs }) => refs));
  const standing = [...nodes.values()].filter(({ id, lon }) => used.has(id) || isIn(lon));
  return pbfFile([
    { nodes: standing.sort((a, b) => a.id - b.id) },
    { ways: kept.toSorted((a, b) => a.id - b.id) },
    {
      relations: relations
        .filter(({ members }) => members.some(({ type, ref }) => type === 'way' && ids.has(ref)))
        .map(({ id, tags, members }) => ({
          id,
          tags,
          members: members.map(({ type, ref, role }) => ({ type, id: ref, role })),
        })),
    },
  ]);
}

beforeAll(async () => {
  const district = await readDistrict();
  const lons = [...district.nodes.values()].map(({ lon }) => lon).sort((a, b) => a - b);
  const middle = lons[Math.floor(lons.length / 2)]!;
  const halves = {
    west: cutOut(district, (lon) => lon < middle),
    east: cutOut(district, (lon) => lon >= middle),
  };
  for (const [name, bytes] of Object.entries(halves)) {
    const path = join(home, `${name}.osm.pbf`);
    writeFileSync(path, bytes);
    const files = [{ path, name, stays: true }];
    const tools = { shelf, importPart: importByHand, now: () => new Date(0) };
    worked(await importMap(tools, { name, files, origin: { by: 'file' } }, hooks));
  }
}, 60_000);

describe('two neighbouring extracts on the shelf', () => {
  it.each(['barred', 'clear', 'everything'])('join without a seam: the drive %s', async (drive) => {
    const report = async (mapPaths: readonly string[]) => {
      const routePath = join(SAMPLES, 'drives', `${drive}.gpx`);
      const vehiclePath = join(SAMPLES, 'vehicles', 'coach-built-7.4.json');
      const request = { routePath, mapPaths, vehiclePath, shelf, country: 'GB' };
      const { report } = worked(await checkFromFiles(request, { now: () => new Date(0) }));
      const { map: _, ...rest } = report;
      return rest;
    };
    expect(await report([])).toEqual(await report([join(SAMPLES, 'district.osm.pbf')]));
  });
});
