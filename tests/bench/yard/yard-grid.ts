/**
 * The grid of a library: 100 drives of 20 km on a shelf, twelve vehicles, by `lanegauge yard grid` in a program just
 * started. Reference of the same run: the same pairs by `lanegauge check`, a program each, of which every fiftieth is run
 * and held against its cell.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import type { Result } from '../../../geo/result.ts';
import { cellOf } from '../../../geo/yard/cell.ts';
import { openMap } from '../../../main/services/map/open-map.ts';
import { importWithWords } from '../../../main/services/shelf/import-with-words.ts';
import { importMap } from '../../../main/services/shelf/shelf-work.ts';
import { shelfFolder } from '../../../main/services/shelf/where-shelf.ts';
import { randomDrive, seeded, trackOf } from '../../support/random-drives.ts';
import { runProgram, sayTook, type Took } from '../shelf/timed-program.ts';
import { tellRow } from '../table.ts';

const PROGRAM = '.build/program/cli/main.js';
const DRIVES = 100;
const LENGTH_M = 20_000;
const MAP = 'gb-rutland';
const BASES = ['panel-van-6.0', 'coach-built-7.0', 'coach-built-7.4', 'a-class-4.25t'];
/** three of each: as it is, and taller */
const TALLER_M = [0, 0.1, 0.25];
/** of the single checks so many are run */
const EACH = 50;

const data = process.env['LANEGAUGE_DATA'];
const home = mkdtempSync(join(tmpdir(), 'yard-bench-'));

if (data) {
  try {
    await run(join(data, 'maps', `${MAP}.osm.pbf`));
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
} else console.log('LANEGAUGE_DATA is not set: no map for a grid');

interface ToldGrid {
  readonly drives: readonly { readonly id: string; readonly name: string }[];
  readonly vehicles: readonly { readonly id: string }[];
  readonly cells: readonly {
    readonly drive: string;
    readonly vehicle: string;
    readonly verdict: string;
    readonly counts: object;
    readonly tightest?: object;
  }[];
}

async function run(path: string): Promise<void> {
  const gpx = await writeDrives(path);
  const cards = writeCards();
  await putOnShelf(path);
  runProgram([PROGRAM, 'yard', 'add', ...gpx], home);
  const words = ['yard', 'grid', '--json', ...cards.flatMap((card) => ['--vehicle', card])];
  const grid = runProgram([PROGRAM, ...words], home);
  const told: ToldGrid = JSON.parse(grid.out);
  const single = checkSome(told, gpx, cards);
  const pairs = told.cells.length;
  tellRow({
    work: `grid of ${told.drives.length} drives × ${told.vehicles.length} vehicles (${MAP} on the shelf, 20 km each), program just started`,
    must: 'followed once per drive, all cores',
    aim: '< 4 s',
    measured: sayTook(grid),
    reference: `${pairs} single checks ${sayTook(single)}, from every ${EACH}th: ${(single.cpuMs / grid.cpuMs).toFixed(0)} × as much`,
  });
}

async function writeDrives(path: string): Promise<string[]> {
  const roads = worked(await openMap([path], undefined));
  const random = seeded(11);
  const files: string[] = [];
  while (files.length < DRIVES) {
    const known = randomDrive(roads, LENGTH_M, random);
    if (!known) continue;
    const file = join(home, `drive-${files.length}.gpx`);
    writeFileSync(file, gpxOf(trackOf(known)));
    files.push(file);
  }
  return files;
}

function gpxOf({ segments }: Route): string {
  const points = segments.flatMap(({ lat, lon }) =>
    [...lat].map((each, i) => `<trkpt lat="${each.toFixed(7)}" lon="${(lon[i] ?? 0).toFixed(7)}"/>`),
  );
  return `<gpx version="1.1" creator="bench" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>${points.join('')}</trkseg></trk></gpx>`;
}

function writeCards(): string[] {
  return BASES.flatMap((base) => {
    const card = JSON.parse(readFileSync(`sample-routes/vehicles/${base}.json`, 'utf8'));
    return TALLER_M.map((taller, i) => {
      const file = join(home, `${base}-${i}.json`);
      writeFileSync(file, JSON.stringify({ ...card, heightM: card.heightM + taller }));
      return file;
    });
  });
}

async function putOnShelf(path: string): Promise<void> {
  const shelf = { shelf: shelfFolder(home), importPart: importWithWords, now: () => new Date() };
  const files = [{ path, name: `${MAP}.osm.pbf`, stays: true }];
  const hooks = { signal: new AbortController().signal, onProgress: () => {} };
  worked(await importMap(shelf, { name: MAP, files, origin: { by: 'file' } }, hooks));
}

/** What all single checks would take, from some of them; each must say what its cell says. */
function checkSome(
  { drives, vehicles, cells }: ToldGrid,
  gpx: readonly string[],
  cards: readonly string[],
): Took {
  let [ms, cpuMs, differ] = [0, 0, 0];
  const some = cells.filter((_, i) => i % EACH === 0);
  for (const cell of some) {
    const name = drives.find(({ id }) => id === cell.drive)?.name ?? '';
    const route = gpx.find((file) => file.endsWith(`/${name}.gpx`)) ?? '';
    const card = cards[vehicles.findIndex(({ id }) => id === cell.vehicle)] ?? '';
    const took = runProgram([PROGRAM, 'check', '--route', route, '--vehicle', card, '--json'], home);
    ms += took.ms;
    cpuMs += took.cpuMs;
    const report: DriveReport = JSON.parse(took.out);
    const { verdict, counts, tightest } = cellOf(report);
    const same =
      JSON.stringify([verdict, counts, tightest]) ===
      JSON.stringify([cell.verdict, cell.counts, cell.tightest]);
    if (!same) differ++;
  }
  console.log(`${some.length} single checks: ${differ} differ from their cells`);
  if (differ > 0) process.exitCode = 1;
  const times = cells.length / some.length;
  return { ms: ms * times, cpuMs: cpuMs * times };
}

function worked<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(result.error.message);
}
