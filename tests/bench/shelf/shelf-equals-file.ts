/**
 * The shelf against the file: 200 random drives on every real extract and on the sample, each checked from the map file and from the shelf
 * after an import. Prints how many reports differ by a byte, but for `map` (must be none), and what reading the map
 * took, as a ratio. Words name the extracts to take, by a part of their names.
 */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { checkDrive } from '../../../geo/check.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import type { Result } from '../../../geo/result.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { openMap } from '../../../main/services/map/open-map.ts';
import { importWithWords } from '../../../main/services/shelf/import-with-words.ts';
import { openShelf } from '../../../main/services/shelf/open-shelf.ts';
import { roadsFromShelf } from '../../../main/services/shelf/roads-from-shelf.ts';
import { importMap } from '../../../main/services/shelf/shelf-work.ts';
import { COACH_BUILT } from '../../support/coach-built.ts';
import { randomDrive, seeded, trackOf } from '../../support/random-drives.ts';

const DRIVES = 200;
/** Too small for longer drives. */
const SMALL = /berlin|monaco|district/;
const SAMPLE = 'sample-routes/district.osm.pbf';
const data = process.env['LANEGAUGE_DATA'];
const home = mkdtempSync(join(tmpdir(), 'shelf-bench-'));
const hooks = { signal: new AbortController().signal, onProgress: () => {} };

if (data) {
  const maps = readdirSync(join(data, 'maps')).filter((name) => name.endsWith('.osm.pbf'));
  const paths = [
    ...maps.map((name) => join(data, 'maps', name)),
    join(data, 'seattle', 'network.osm.xml.gz'),
    SAMPLE,
  ];
  const named = process.argv.slice(2);
  for (const path of paths)
    if (named.length === 0 || named.some((word) => path.includes(word))) await run(path);
} else console.log('LANEGAUGE_DATA is not set: no maps to take in');
rmSync(home, { recursive: true });

async function run(path: string): Promise<void> {
  const name = path.split('/').at(-1) ?? '';
  const shelf = join(home, name);
  worked(
    await importMap(
      { shelf, importPart: importWithWords, now: () => new Date() },
      { name, files: [{ path, name, stays: true }], origin: { by: 'file' } },
      hooks,
    ),
  );
  const open = await openShelf(shelf);
  const whole = worked(await openMap([path], undefined));
  const random = seeded(21);
  let [done, differing, fileMs, shelfMs] = [0, 0, 0, 0];
  while (done < DRIVES) {
    const known = randomDrive(whole, SMALL.test(name) ? 4000 : 20_000, random);
    if (known === undefined) continue;
    const route = trackOf(known);
    done++;
    const started = performance.now();
    const fromFile = worked(await openMap([path], route));
    const between = performance.now();
    const { roads } = await roadsFromShelf(open, route, async () => {});
    shelfMs += performance.now() - between;
    fileMs += between - started;
    if (report(route, fromFile) !== report(route, roads)) differing++;
  }
  open.close();
  console.log(
    `${name}: ${done} drives, ${differing} reports differ; the map read from the shelf in ${(shelfMs / done).toFixed(0)} ms a drive, 1/${(fileMs / shelfMs).toFixed(1)} of reading the file`,
  );
}

function worked<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(result.error.message);
}

function report(route: Route, roads: Roads): string {
  const drive = followRoads(route, roads);
  const { map: _, ...rest } = checkDrive({
    route,
    file: '',
    drive,
    roads,
    card: COACH_BUILT,
    program: '',
    made: '',
  });
  return JSON.stringify(rest);
}
