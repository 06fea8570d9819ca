/**
 * The check of a drive from the shelf in a program just started, against the size of the map and the length of the
 * drive, and against the same check from the file. Maps are made of the extracts in LANEGAUGE_DATA/maps on a grid; the
 * same drive lies in each. What the system has read once it keeps in memory: it is the program that is cold, not the
 * disk. Sizes in megabytes may be named, the smallest first.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
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
import { makeGridMap } from './make-grid-map.ts';

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

interface Kept {
  readonly megabytes: number;
  readonly path: string;
  readonly home: string;
  readonly roads: number;
}

/** In a process of its own: reads the map about a drive, from the file or from the shelf, and prints what it took. */
async function readOne([routePath = '', from = '', where = '']: readonly string[]): Promise<void> {
  const file = worked(await readRouteFile(routePath));
  const { route } = worked(chooseRoute(file));
  const started = performance.now();
  worked(from === 'file' ? await openMap([where], route) : await roadsOnShelf(shelfFolder(where), route));
  console.log(performance.now() - started);
}

function worked<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(result.error.message);
}

async function run(folder: string): Promise<void> {
  execFileSync(process.execPath, ['main/run.mjs']);
  for (const megabytes of [SMALL_MB, ...sizes.slice(-1)]) await tellOpening(await keep(folder, megabytes));
  const makeDrive = await gridDrives(folder);
  const [first = 0, ...others] = sizes;
  const small = await keep(folder, first);
  const routes = LENGTHS_KM.map((km) => {
    const route = join(BENCH_FOLDER, `drive-${km}.gpx`);
    writeFileSync(route, makeDrive(km));
    return { km, route };
  });
  const bareMs = best(() => timed(['-e', '']).ms);
  const coldMs = new Map(routes.map(({ km, route }) => [km, bestCheck(route, small.home)]));
  for (const { km, route } of routes) {
    const ms = coldMs.get(km) ?? Number.NaN;
    const fromFile = timedCheck(route, small.home, ['--map', small.path]);
    const fileMs = best(() => timedCheck(route, small.home, ['--map', small.path]).ms);
    const same = fromFile.report === timedCheck(route, small.home).report;
    console.log(
      `${km} km: ${ms.toFixed(0)} ms cold from ${small.roads} roads; from the file of ${first} MB ${fileMs.toFixed(0)} ms, ${same ? 'the same report' : 'ANOTHER REPORT'}; ${fromFile.findings} findings`,
    );
    if (!same) process.exitCode = 1;
    const readMs = best(() => timedReading(route, 'shelf', small.home));
    const readFileMs = best(() => timedReading(route, 'file', small.path));
    tellRow({
      work: `read the map about a ${km} km drive from a shelf of ${small.roads} roads, program just started`,
      must: '',
      aim: '',
      measured: `${(readMs / 1000).toFixed(2)} s`,
      reference: `from its file of ${first} MB ${(readFileMs / 1000).toFixed(2)} s: 1/${(readFileMs / readMs).toFixed(1)}`,
    });
    tellRow({
      work: `check a ${km} km drive from a shelf of ${small.roads} roads, program just started`,
      must: km === DECIDING_KM ? '< 1 s, ≤ 1/10 of the file' : 'linear in its length',
      aim: km === DECIDING_KM ? '< 0.5 s' : '',
      measured: `${(ms / 1000).toFixed(2)} s`,
      reference: `the same from its file of ${first} MB ${(fileMs / 1000).toFixed(2)} s: 1/${(fileMs / ms).toFixed(1)}; Node doing nothing ${bareMs.toFixed(0)} ms`,
    });
  }
  const { route = '' } = routes.find(({ km }) => km === DECIDING_KM) ?? {};
  const smallReport = timedCheck(route, small.home).report;
  for (const megabytes of others) {
    const large = await keep(folder, megabytes);
    // in turn, so that a load that comes and goes weighs on both
    const [largeMs, smallMs] = [bestCheck(route, large.home), bestCheck(route, small.home)];
    const same = timedCheck(route, large.home).report === smallReport;
    console.log(
      `${megabytes} MB, ${large.roads} roads: ${largeMs.toFixed(0)} ms, ${small.roads} roads: ${smallMs.toFixed(0)} ms; ${same ? 'the same report' : 'ANOTHER REPORT'}`,
    );
    if (!same) process.exitCode = 1;
    tellRow({
      work: `the same for ${DECIDING_KM} km from a shelf of ${large.roads} roads`,
      must: 'flat',
      aim: '',
      measured: `${(largeMs / 1000).toFixed(2)} s`,
      reference: `from ${small.roads} roads ${(smallMs / 1000).toFixed(2)} s: ${(largeMs / smallMs).toFixed(2)} × for ${(large.roads / small.roads).toFixed(0)} × the map`,
    });
  }
}

/** The map of this size and a shelf with it, both made where they are not there yet or cannot be used any more. */
async function keep(folder: string, megabytes: number): Promise<Kept> {
  const path = makeGridMap(folder, megabytes);
  const home = join(BENCH_FOLDER, `home-${megabytes}`);
  let roads = await roadsIn(home);
  if (roads === 0 || statSync(home).mtimeMs < statSync(path).mtimeMs) {
    mkdirSync(home, { recursive: true });
    execFileSync(process.execPath, [PROGRAM, 'shelf', 'import', path], {
      env: { ...process.env, LANEGAUGE_HOME: home },
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    roads = await roadsIn(home);
  }
  return { megabytes, path, home, roads };
}

async function roadsIn(home: string): Promise<number> {
  if (!existsSync(home)) return 0;
  const shelf = await openShelf(shelfFolder(home));
  const roads = shelf.parts.reduce((sum, { part }) => sum + part.meta.roads, 0);
  shelf.close();
  return roads;
}

async function tellOpening({ home, roads, megabytes }: Kept): Promise<void> {
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

function timedReading(route: string, from: 'shelf' | 'file', where: string): number {
  return Number(timed([process.argv[1] ?? '', '--read', route, from, where]).out);
}

function bestCheck(route: string, home: string, more: readonly string[] = []): number {
  return best(() => timedCheck(route, home, more).ms);
}

function best(run: () => number): number {
  return Math.min(...Array.from({ length: RUNS }, run));
}

/** @returns the report without what tells the map and the time */
function timedCheck(
  route: string,
  home: string,
  more: readonly string[] = [],
): { ms: number; report: string; findings: number } {
  const { ms, out } = timed(
    [PROGRAM, 'check', '--route', route, '--vehicle', VEHICLE, '--json', ...more],
    home,
  );
  const { map: _, made: __, ...report } = JSON.parse(out);
  return { ms, report: JSON.stringify(report), findings: report.findings.length };
}

function timed(words: readonly string[], home = ''): { ms: number; out: string } {
  const started = performance.now();
  const ended = spawnSync(process.execPath, words, {
    encoding: 'utf8',
    maxBuffer: 2 ** 28,
    env: { ...process.env, LANEGAUGE_HOME: home },
  });
  const ms = performance.now() - started;
  if (ended.status !== 0 && ended.status !== 1) throw new Error(ended.stderr);
  return { ms, out: ended.stdout };
}
