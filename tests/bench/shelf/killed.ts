/**
 * Programs that work on a shelf, killed with SIGKILL at random moments: a first import, an import over an old map, a
 * fetch along a drive. After each kill the old map must be served whole or the new one, nothing half be listed or left
 * after a sweep, and the next import work. Prints how many were killed before and after their map was there, and what
 * went wrong (must be nothing). How often and the seed may be named: `killed.js 50 1`.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { listMaps } from '../../../main/services/shelf/list-maps.ts';
import { shelfFolder } from '../../../main/services/shelf/where-shelf.ts';
import { serveOverpass } from '../../support/map-server/serve-overpass.ts';
import { LONG, straightMap } from '../../support/map-server/straight-map.ts';
import { seeded } from '../../support/random-drives.ts';
import { type Ended, takeIn } from '../../support/shelf/kill-program.ts';
import { leftAfterSweep } from '../../support/shelf/leftovers.ts';
import { servedBy, writeVersion } from '../../support/shelf/two-maps.ts';
import { tellRow } from '../table.ts';

const [times = 50, seed = 1] = process.argv.slice(2).map(Number);
const random = seeded(seed);
/** So many steps of the road: an import of it takes long enough to be hit in each of its stages. */
const STEPS = 4_000;

interface Tally {
  before: number;
  after: number;
  readonly wrong: string[];
}

const home = mkdtempSync(join(tmpdir(), 'killed-'));
const rounds: readonly [string, () => Promise<Tally>][] = [
  ['a first import', firstImports],
  ['an import over an old map', updates],
  ['a fetch along a drive', fetches],
];
for (const [what, run] of rounds) {
  const { before, after, wrong } = await run();
  console.log(
    `${what}: killed ${times} times, ${before} before its map was there and ${after} after; ${wrong.length} wrong`,
  );
  for (const each of wrong) console.log(`  ${each}`);
  if (wrong.length > 0) process.exitCode = 1;
  tellRow({
    work: `${what}, killed at ${times} random moments`,
    must: 'nothing lost, nothing half',
    aim: '',
    measured: `${wrong.length} wrong`,
    reference: `${before} before the new map was there, ${after} after`,
  });
}
rmSync(home, { recursive: true });

async function firstImports(): Promise<Tally> {
  const tally: Tally = { before: 0, after: 0, wrong: [] };
  const path = writeVersion(home, 1, STEPS);
  const whole = join(home, 'whole');
  const ms = await uninterrupted(['import', whole, 'Vale', path]);
  const want = await servedBy(whole);
  for (let kill = 0; kill < times; kill++) {
    const shelf = join(home, `first-${kill}`);
    const ended = await takeIn(['import', shelf, 'Vale', path], moment(ms));
    const served = await servedBy(shelf);
    if (served === want) tally.after++;
    else if (served.startsWith('shelf.empty')) tally.before++;
    else tally.wrong.push(`${kill}: serves ${served.slice(0, 200)}`);
    await judge(tally, shelf, ended, served === want);
    rmSync(shelf, { recursive: true, force: true });
  }
  return tally;
}

async function updates(): Promise<Tally> {
  const tally: Tally = { before: 0, after: 0, wrong: [] };
  const shelf = join(home, 'updates');
  const ms = await uninterrupted(['import', shelf, 'Vale', writeVersion(home, 0, STEPS)]);
  let old = await servedBy(shelf);
  for (let version = 1; version <= times; version++) {
    const ended = await takeIn(['import', shelf, 'Vale', writeVersion(home, version, STEPS)], moment(ms));
    const served = await servedBy(shelf);
    const isNew = served.includes(`Version ${version}"`) && !served.includes('damaged');
    if (isNew) tally.after++;
    else if (served === old) tally.before++;
    else tally.wrong.push(`${version}: serves ${served.slice(0, 200)}`);
    await judge(tally, shelf, ended, isNew);
    old = served;
  }
  const last = await takeIn(['import', shelf, 'Vale', writeVersion(home, times + 1, STEPS)]);
  if (!last.done) tally.wrong.push(`the import after all kills: ${last.complaint}`);
  return tally;
}

async function fetches(): Promise<Tally> {
  const tally: Tally = { before: 0, after: 0, wrong: [] };
  let close = () => {};
  const atEnd = (end: () => void) => {
    close = end;
  };
  const server = await serveOverpass(straightMap(LONG).map, { atEnd });
  const dataFolder = join(home, 'data');
  const shelf = shelfFolder(dataFolder);
  const words = ['fetch', dataFolder, server.address.href];
  const ms = await uninterrupted(words);
  const want = await mapsOf(shelf);
  rmSync(dataFolder, { recursive: true });
  for (let kill = 0; kill < times; kill++) {
    const ended = await takeIn(words, moment(ms));
    const there = await mapsOf(shelf);
    if (there === want) tally.after++;
    else if (there === '[]') tally.before++;
    else tally.wrong.push(`${kill}: ${there}`);
    await judge(tally, shelf, ended, there === want);
    // every other time it goes on from what it has
    if (kill % 2 === 1) rmSync(dataFolder, { recursive: true, force: true });
  }
  const last = await takeIn(words);
  if (!last.done || (await mapsOf(shelf)) !== want)
    tally.wrong.push(`the fetch after all: ${last.complaint}`);
  close();
  return tally;
}

/** What tells one map from another: how many roads, and its state. */
async function mapsOf(shelf: string): Promise<string> {
  return JSON.stringify((await listMaps(shelf)).map(({ name, roads, state }) => ({ name, roads, state })));
}

async function judge(tally: Tally, shelf: string, ended: Ended, isNew: boolean): Promise<void> {
  const { wrong } = tally;
  if (ended.complaint !== '') wrong.push(`it complained: ${ended.complaint.slice(0, 300)}`);
  if (ended.done && !isNew) wrong.push('it said that it was done, and its map is not there');
  const left = await leftAfterSweep(shelf);
  if (left.length > 0) wrong.push(`left after a sweep: ${left.join(', ')}`);
}

/** How long it takes when nobody kills it. */
async function uninterrupted(words: readonly string[]): Promise<number> {
  const { done, ms, complaint } = await takeIn(words);
  if (!done) throw new Error(`not even undisturbed: ${complaint}`);
  return ms;
}

/** Somewhere in the time that it takes, or a little after. */
function moment(ms: number): number {
  return random() * 1.1 * ms;
}
