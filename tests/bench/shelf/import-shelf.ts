/**
 * Takes maps of several sizes onto the shelf, each in a process of its own: time against osmium's `fileinfo -e` and
 * against reading the same file (`cat`) in the same run, the peak memory of the process with its threads, what the part
 * takes of the disk. The maps are made of the extracts in LANEGAUGE_DATA/maps on a grid; sizes in megabytes may be named.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
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
    compare(makeGridMap(join(data, 'maps'), size));

/** In a process of its own. */
async function importOne(path: string): Promise<void> {
  const folder = mkdtempSync(join('.bench', 'part-'));
  const out = join(folder, 'part');
  const start = performance.now();
  const result = await importPart({ path, name: 'map' }, out, join(folder, 'temp'));
  const seconds = (performance.now() - start) / 1000;
  if (!result.ok) throw new Error(result.error.message);
  const { roads, nodes } = result.value;
  const peakMb = process.resourceUsage().maxRSS / 1000;
  console.log(JSON.stringify({ seconds, peakMb, roads, nodes, bytes: statSync(out).size }));
  rmSync(folder, { recursive: true });
}

function compare(path: string): void {
  const size = statSync(path).size / 1e6;
  const runs = size < 100 ? 3 : 1;
  let osmium = Number.POSITIVE_INFINITY;
  let cat = Number.POSITIVE_INFINITY;
  let best = { seconds: Number.POSITIVE_INFINITY, peakMb: 0, roads: 0, nodes: 0, bytes: 0 };
  for (let run = 0; run < runs; run++) {
    cat = Math.min(cat, seconds('cat', [path]));
    osmium = Math.min(osmium, seconds('osmium', ['fileinfo', '-e', path]));
    const told: typeof best = JSON.parse(
      execFileSync(process.execPath, [script ?? fileURLToPath(import.meta.url), '--one', path], {
        encoding: 'utf8',
      }),
    );
    if (told.seconds < best.seconds) best = { ...told, peakMb: Math.max(best.peakMb, told.peakMb) };
  }
  console.log(
    `${size.toFixed(0)} MB: ${best.seconds.toFixed(2)} s, osmium ${osmium.toFixed(2)} s (${(best.seconds / osmium).toFixed(2)} x), cat ${cat.toFixed(2)} s, peak ${best.peakMb.toFixed(0)} MB, ${best.roads} roads, ${(best.bytes / best.roads).toFixed(0)} bytes a road`,
  );
  tellRow({
    work: `take a map of ${size.toFixed(0)} MB onto the shelf`,
    must: '≤ 2 × osmium’s time, < 300 MB',
    aim: 'as fast as osmium',
    measured: `${best.seconds.toFixed(2)} s, ${best.peakMb.toFixed(0)} MB at its peak, ${(best.bytes / best.roads).toFixed(0)} bytes a road`,
    reference: `osmium fileinfo -e ${osmium.toFixed(2)} s: ${(best.seconds / osmium).toFixed(2)} ×; cat ${cat.toFixed(2)} s`,
  });
}

function seconds(command: string, words: readonly string[]): number {
  const start = performance.now();
  execFileSync(command, words, { stdio: ['ignore', 'ignore', 'inherit'] });
  return (performance.now() - start) / 1000;
}
