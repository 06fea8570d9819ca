/**
 * Takes maps of several sizes onto the shelf, each in a process of its own: time, by the clock and of processors, against
 * osmium's `fileinfo -e` and against reading the same file (`cat`) in the same run, the peak memory of the process with
 * its threads, what the part takes of the disk. The maps are made of the extracts in LANEGAUGE_DATA/maps on a grid; sizes in megabytes may be named.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { FRUGAL, wantsApart } from '../../../main/services/shelf/apart/import-apart.ts';
import { importPart } from '../../../main/services/shelf/import/import-part.ts';
import { tellRow } from '../table.ts';
import { makeGridMap } from './make-grid-map.ts';

const [, script, ...words] = process.argv;
const data = process.env['LANEGAUGE_DATA'];
const SIZES = [41, 400];

if (words[0] === '--one') await importOne(words[1]!);
else if (!data) console.log('LANEGAUGE_DATA is not set: no map to take in');
else
  for (const size of words.length > 0 ? words.map(Number) : SIZES)
    await compare(makeGridMap(join(data, 'maps'), size));

/** In a process of its own. */
async function importOne(path: string): Promise<void> {
  const folder = mkdtempSync(join('.bench', 'part-'));
  const out = join(folder, 'part');
  const start = performance.now();
  const result = await importPart({ path, name: 'map' }, out, join(folder, 'temp'));
  const seconds = (performance.now() - start) / 1000;
  const { user, system } = process.cpuUsage();
  if (!result.ok) throw new Error(result.error.message);
  const { roads, nodes } = result.value;
  const peakMb = process.resourceUsage().maxRSS / 1000;
  console.log(
    JSON.stringify({ seconds, cpu: (user + system) / 1e6, peakMb, roads, nodes, bytes: statSync(out).size }),
  );
  rmSync(folder, { recursive: true });
}

async function compare(path: string): Promise<void> {
  const size = statSync(path).size / 1e6;
  const runs = size < 100 ? 3 : 1;
  let osmium = NONE;
  let cat = NONE;
  let best = { ...NONE, peakMb: 0, roads: 0, nodes: 0, bytes: 0 };
  for (let run = 0; run < runs; run++) {
    cat = quicker(cat, timed('cat', [path]));
    osmium = quicker(osmium, timed('osmium', ['fileinfo', '-e', path]));
    const told: typeof best = JSON.parse(
      execFileSync(process.execPath, [script ?? fileURLToPath(import.meta.url), '--one', path], {
        encoding: 'utf8',
        // as it is done
        env: { ...process.env, ...((await wantsApart(path)) ? FRUGAL : {}) },
      }),
    );
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

const NONE: Times = { seconds: Number.POSITIVE_INFINITY, cpu: Number.POSITIVE_INFINITY };

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
