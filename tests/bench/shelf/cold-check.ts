/**
 * The check of a drive from the shelf in a program just started, against the size of the map and the length of the
 * drive, and against the same check from the file. Maps are made of the extracts in LANEGAUGE_DATA/maps on a grid; the
 * same drive lies in each. What the system has read once it keeps in memory: it is the program that is cold, not the
 * disk. Sizes in megabytes may be named, the smallest first.
 */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chooseRoute } from '../../../geo/drive/gpx/choose-route.ts';
import type { Result } from '../../../geo/result.ts';
import { openMap } from '../../../main/services/map/open-map.ts';
import { readRouteFile } from '../../../main/services/route/read-route-file.ts';
import { openShelf } from '../../../main/services/shelf/open-shelf.ts';
import { roadsOnShelf } from '../../../main/services/shelf/roads-on-shelf.ts';
import { shelfFolder } from '../../../main/services/shelf/where-shelf.ts';
import { tellRow } from '../table.ts';
import { gridDrives } from './grid-drives.ts';
import { type KeptGrid, keepGrid } from './keep-grid.ts';
import { bestOf, runProgram, sayTook, type Took } from './timed-program.ts';

const PROGRAM = '.build/program/cli/main.js';
const VEHICLE = 'sample-routes/vehicles/coach-built-7.0.json';
const BENCH_FOLDER = '.bench';
const LENGTHS_KM = [30, 300, 1000];
const DECIDING_KM = 300;
const RUNS = 5;
/** Of a map of so many megabytes come about 150,000 roads. */
const SMALL_MB = 10;

const data = process.env['LANEGAUGE_DATA'];
const words = process.argv.slice(2).map(Number);
const sizes = words.length > 0 ? words : [41, 400];

if (process.argv[2] === '--read') await readOne(process.argv.slice(3));
else if (!data) console.log('LANEGAUGE_DATA is not set: no map to check on');
else await run(join(data, 'maps'));

/** In a process of its own: reads the map about a drive, from the file or from the shelf, and prints what it took. */
async function readOne([routePath = '', from = '', where = '']: readonly string[]): Promise<void> {
  const file = worked(await readRouteFile(routePath));
  const { route } = worked(chooseRoute(file));
  const started = performance.now();
  const before = process.cpuUsage();
  worked(from === 'file' ? await openMap([where], route) : await roadsOnShelf(shelfFolder(where), route));
  const { user, system } = process.cpuUsage(before);
  console.log(JSON.stringify({ ms: performance.now() - started, cpuMs: (user + system) / 1000 }));
}

function worked<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(result.error.message);
}

async function run(folder: string): Promise<void> {
  execFileSync(process.execPath, ['main/run.mjs']);
  for (const megabytes of [SMALL_MB, ...sizes.slice(-1)])
    await tellOpening(await keepGrid(folder, megabytes));
  const makeDrive = await gridDrives(folder);
  const [first = 0, ...others] = sizes;
  const small = await keepGrid(folder, first);
  const bare = bestOf(RUNS, () => runProgram(['-e', '']));
  let deciding = '';
  for (const km of LENGTHS_KM) {
    const route = join(BENCH_FOLDER, `drive-${km}.gpx`);
    writeFileSync(route, makeDrive(km));
    if (km === DECIDING_KM) deciding = route;
    compareWithFile(km, route, small, bare);
  }
  for (const megabytes of others) compareSizes(deciding, small, await keepGrid(folder, megabytes));
}

function compareWithFile(
  km: number,
  route: string,
  { roads, home, path, megabytes }: KeptGrid,
  bare: Took,
): void {
  const shelf = bestOf(RUNS, () => check(route, home));
  const file = bestOf(RUNS, () => check(route, home, path));
  mustBeSame(check(route, home), check(route, home, path), `${km} km from the shelf and from the file`);
  const readShelf = bestOf(RUNS, () => read(route, 'shelf', home));
  const readFile = bestOf(RUNS, () => read(route, 'file', path));
  const where = `a shelf of ${roads} roads, program just started`;
  tellRow({
    work: `check a ${km} km drive from ${where}`,
    must: km === DECIDING_KM ? '< 1 s, ≤ 1/10 of the file' : 'linear in its length',
    aim: km === DECIDING_KM ? '< 0.5 s' : '',
    measured: sayTook(shelf),
    reference: `from its file of ${megabytes} MB ${sayTook(file)}: 1/${(file.cpuMs / shelf.cpuMs).toFixed(1)}; Node doing nothing ${sayTook(bare)}`,
  });
  tellRow({
    work: `of that, read the map about the drive`,
    must: '',
    aim: '',
    measured: sayTook(readShelf),
    reference: `from its file ${sayTook(readFile)}: 1/${(readFile.cpuMs / readShelf.cpuMs).toFixed(1)}`,
  });
}

function compareSizes(route: string, small: KeptGrid, large: KeptGrid): void {
  // in turn, so that a load that comes and goes weighs on both
  const [inLarge, inSmall] = [large, small].map(({ home }) => bestOf(RUNS, () => check(route, home)));
  if (!inLarge || !inSmall) return;
  mustBeSame(check(route, small.home), check(route, large.home), `both shelves`);
  tellRow({
    work: `the same for ${DECIDING_KM} km from a shelf of ${large.roads} roads`,
    must: 'flat',
    aim: '',
    measured: sayTook(inLarge),
    reference: `from ${small.roads} roads ${sayTook(inSmall)}: ${(inLarge.cpuMs / inSmall.cpuMs).toFixed(2)} × for ${(large.roads / small.roads).toFixed(0)} × the map`,
  });
}

/** By what they say, without the map's name and the time. */
function mustBeSame(a: { readonly out: string }, b: { readonly out: string }, what: string): void {
  const said = ({ out }: { readonly out: string }) => {
    const { map: _, made: __, ...report } = JSON.parse(out);
    return JSON.stringify(report);
  };
  const same = said(a) === said(b);
  console.log(
    `${what}: ${same ? 'the same report' : 'ANOTHER REPORT'}, ${JSON.parse(a.out).findings.length} findings`,
  );
  if (!same) process.exitCode = 1;
}

/** @param map a file, read instead of the shelf */
function check(route: string, home: string, map?: string) {
  const words = ['check', '--route', route, '--vehicle', VEHICLE, '--json'];
  return runProgram([PROGRAM, ...words, ...(map === undefined ? [] : ['--map', map])], home);
}

/** What the reading itself took, as the program tells it. */
function read(route: string, from: 'shelf' | 'file', where: string): Took {
  return JSON.parse(runProgram([process.argv[1] ?? '', '--read', route, from, where]).out);
}

/** The map of this size and a shelf with it, both made where they are not there yet or cannot be used any more. */
async function tellOpening({ home, roads, megabytes }: KeptGrid): Promise<void> {
  const tookMs: number[] = [];
  for (let i = 0; i < RUNS; i++) {
    const started = performance.now();
    const shelf = await openShelf(shelfFolder(home));
    tookMs.push(performance.now() - started);
    shelf.close();
  }
  const bytes = await partBytes(home);
  const [firstMs = Number.NaN] = tookMs;
  console.log(
    `${megabytes} MB, ${roads} roads: opened in ${firstMs.toFixed(1)} ms, again ${Math.min(...tookMs).toFixed(1)} ms; ${(bytes / roads).toFixed(0)} bytes a road`,
  );
  tellRow({
    work: `open a shelf of ${roads} roads`,
    must: roads < 1_000_000 ? '< 0.1 s' : '< 0.2 s',
    aim: '< 0.05 s',
    measured: `${firstMs.toFixed(1)} ms, again ${Math.min(...tookMs).toFixed(1)} ms`,
    reference: `${(bytes / roads).toFixed(0)} bytes a road on the disk`,
  });
}

async function partBytes(home: string): Promise<number> {
  const shelf = await openShelf(shelfFolder(home));
  const bytes = shelf.parts.reduce((sum, { part }) => sum + part.fileBytes, 0);
  shelf.close();
  return bytes;
}
