/**
 * Takes maps of several sizes onto the shelf by the program as it is started in a terminal: time from its start to its
 * end, by the clock and of processors, against osmium's `fileinfo -e` and against reading the same file (`cat`) in the
 * same run, the peak memory of the process with most, what the map takes of the disk. The maps are made of the extracts
 * in LANEGAUGE_DATA/maps on a grid; sizes in megabytes may be named.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { tellRow } from '../table.ts';
import { makeGridMap } from './make-grid-map.ts';
import { runProgram } from './timed-program.ts';

const PROGRAM = '.build/program/cli/main.js';
const data = process.env['LANEGAUGE_DATA'];
const words = process.argv.slice(2);
const SIZES = [41, 400];
const NONE: Times = { seconds: Number.POSITIVE_INFINITY, cpu: Number.POSITIVE_INFINITY };

if (!data) console.log('LANEGAUGE_DATA is not set: no map to take in');
else
  for (const size of words.length > 0 ? words.map(Number) : SIZES)
    compare(makeGridMap(join(data, 'maps'), size));

/** On a shelf of its own. */
function takeIn(path: string): Times & { peakMb: number; roads: number; bytes: number } {
  const home = mkdtempSync(join('.bench', 'home-'));
  const { ms, cpuMs, peakMb, out } = runProgram([PROGRAM, 'shelf', 'import', path, '--json'], home);
  const [{ roads, bytes }] = JSON.parse(out).maps;
  rmSync(home, { recursive: true });
  return { seconds: ms / 1000, cpu: cpuMs / 1000, peakMb, roads, bytes };
}

function compare(path: string): void {
  const size = statSync(path).size / 1e6;
  const runs = size < 100 ? 3 : 1;
  let osmium = NONE;
  let cat = NONE;
  let best = { ...NONE, peakMb: 0, roads: 0, bytes: 0 };
  for (let run = 0; run < runs; run++) {
    cat = quicker(cat, timed('cat', [path]));
    osmium = quicker(osmium, timed('osmium', ['fileinfo', '-e', path]));
    const told = takeIn(path);
    const peakMb = Math.max(best.peakMb, told.peakMb);
    best = { ...quicker(best, told), peakMb };
  }
  console.log(
    `${size.toFixed(0)} MB: ${say(best)}, osmium ${say(osmium)}: ${(best.seconds / osmium.seconds).toFixed(2)} x, cat ${say(cat)}, peak ${best.peakMb.toFixed(0)} MB, ${best.roads} roads, ${(best.bytes / best.roads).toFixed(0)} bytes a road`,
  );
  tellRow({
    work: `take a map of ${size.toFixed(0)} MB onto the shelf`,
    must: '≤ 2 × osmium’s time, < 300 MB',
    aim: 'as fast as osmium',
    measured: `${say(best)}, ${best.peakMb.toFixed(0)} MB at its peak, ${(best.bytes / best.roads).toFixed(0)} bytes a road`,
    reference: `osmium fileinfo -e ${say(osmium)}: ${(best.seconds / osmium.seconds).toFixed(2)} ×; cat ${say(cat)}`,
  });
}

interface Times {
  readonly seconds: number;
  /** of processors */
  readonly cpu: number;
}

/** What was quicker by the clock. */
function quicker<T extends Times>(a: T, b: T): T {
  return b.seconds < a.seconds ? b : a;
}

function say({ seconds, cpu }: Times): string {
  return `${seconds.toFixed(2)} s (${cpu.toFixed(2)} s of processors)`;
}

/** Runs a program of the system; the shell knows what it took of the processors. */
function timed(command: string, words: readonly string[]): Times {
  const start = performance.now();
  const script = 'TIMEFORMAT="%U %S"; time "$0" "$@" > /dev/null';
  const { status, stderr } = spawnSync('bash', ['-c', script, command, ...words], { encoding: 'utf8' });
  const seconds = (performance.now() - start) / 1000;
  if (status !== 0) throw new Error(`${command}: ${stderr}`);
  const [user, system] = stderr.trim().split('\n').at(-1)!.split(' ').map(Number);
  return { seconds, cpu: user! + system! };
}
