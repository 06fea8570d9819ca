/**
 * Reads every element of a large PBF (made from the extracts in LANEGAUGE_DATA/maps) against osmium's `fileinfo -e`
 * in the same run, the peak memory of a fresh process that opens it about a drive, and the counts of every extract
 * against osmium's.
 */
import { execFileSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { MapSink } from '../../geo/roads/sink.ts';
import { openMap } from '../../main/services/map/open-map.ts';
import { readPbfFile } from '../../main/services/map/read-pbf-file.ts';
import { extractsIn, makeLargeMap } from './make-large-map.ts';
import { tellRow } from './table.ts';

const RUNS = 5;
const [, script, openPath] = process.argv;
const data = process.env['LANEGAUGE_DATA'];

if (openPath !== undefined) await openAboutDrive(openPath);
else if (!data) console.log('LANEGAUGE_DATA is not set: no map to read');
else {
  const folder = join(data, 'maps');
  await compareCounts(folder);
  await compareSpeed(await makeLargeMap(folder, 36));
}

/** In a process of its own: opens a map about a drive across Rutland and prints the peak of its memory. */
async function openAboutDrive(path: string): Promise<void> {
  const along = Array.from({ length: 301 }, (_, k) => k / 300);
  const started = performance.now();
  const result = await openMap([path], {
    segments: [
      {
        lat: Float64Array.from(along, (share) => 52.53 + 0.2 * share),
        lon: Float64Array.from(along, (share) => -0.8 + 0.35 * share),
      },
    ],
  });
  if (!result.ok) throw new Error(result.error.message);
  const seconds = (performance.now() - started) / 1000;
  const peakMb = process.resourceUsage().maxRSS / 1000;
  console.log(`${result.value.ways.count} ways in ${seconds.toFixed(2)} s, peak ${peakMb.toFixed(0)} MB`);
}

interface Counts {
  nodes: number;
  ways: number;
  relations: number;
}

async function compareCounts(folder: string): Promise<void> {
  for (const name of extractsIn(folder)) {
    const path = join(folder, name);
    const ours = JSON.stringify(await decode(path, 'elements'));
    const theirs = JSON.stringify(osmiumCounts(path));
    console.log(`${name}: ${ours === theirs ? 'counts as osmium' : `OURS ${ours}, OSMIUM ${theirs}`}`);
  }
}

/** As text: asked for JSON, osmium also computes a checksum, which takes as long again. */
function osmiumCounts(path: string): Counts {
  const text = execFileSync('osmium', ['fileinfo', '-e', path], { encoding: 'utf8' });
  const count = (what: string) => Number(new RegExp(`Number of ${what}: (\\d+)`, 'u').exec(text)?.[1]);
  return { nodes: count('nodes'), ways: count('ways'), relations: count('relations') };
}

/** `elements`: ids, places, refs and members of all; `tags`: each tag as text in an object besides. */
async function decode(path: string, depth: 'elements' | 'tags'): Promise<Counts> {
  const seen: Counts = { nodes: 0, ways: 0, relations: 0 };
  const sink: MapSink = {
    nodes(batch) {
      seen.nodes += batch.count;
      if (depth === 'tags') for (let i = 0; i < batch.count; i++) batch.tags(i);
    },
    way(way) {
      seen.ways++;
      if (depth === 'tags') way.tags();
    },
    relation(relation) {
      seen.relations++;
      relation.members();
    },
  };
  const handle = await open(path);
  const result = await readPbfFile({
    handle,
    size: statSync(path).size,
    name: path,
    sink,
    withHash: false,
    pause: async () => {},
  });
  await handle.close();
  if (!result.ok) throw new Error(result.error.message);
  return seen;
}

async function compareSpeed(path: string): Promise<void> {
  const size = (statSync(path).size / 1e6).toFixed(0);
  const best = {
    elements: Number.POSITIVE_INFINITY,
    tags: Number.POSITIVE_INFINITY,
    osmium: Number.POSITIVE_INFINITY,
  };
  for (let run = 0; run < RUNS; run++) {
    best.osmium = Math.min(best.osmium, await seconds(() => osmiumCounts(path)));
    for (const depth of ['elements', 'tags'] as const)
      best[depth] = Math.min(best[depth], await seconds(() => decode(path, depth)));
  }
  const line = (depth: 'elements' | 'tags') =>
    `${depth} ${best[depth].toFixed(2)} s (${(best.osmium / best[depth]).toFixed(2)} x osmium's speed)`;
  console.log(
    `${size} MB: ${line('elements')}, ${line('tags')}, osmium fileinfo -e ${best.osmium.toFixed(2)} s`,
  );
  const report = execFileSync(process.execPath, [script ?? fileURLToPath(import.meta.url), path], {
    encoding: 'utf8',
  });
  console.log(`  opened about a drive, fresh process: ${report.trim()}`);
  for (const [depth, what] of [
    ['elements', 'all elements'],
    ['tags', 'every tag as an object besides'],
  ] as const)
    tellRow({
      work: `decode a PBF of ${size} MB, ${what}`,
      must: depth === 'elements' ? "≥ 0.8 × osmium's speed" : '',
      aim: depth === 'elements' ? 'faster than osmium' : '',
      measured: `${best[depth].toFixed(2)} s`,
      reference: `osmium fileinfo -e ${best.osmium.toFixed(2)} s: ${(best.osmium / best[depth]).toFixed(2)} × its speed`,
    });
  const peakMb = Number(/peak (\d+) MB/.exec(report)?.[1]);
  const bareMb = Number(
    execFileSync(process.execPath, ['-e', 'console.log(process.resourceUsage().maxRSS / 1000)'], {
      encoding: 'utf8',
    }),
  );
  tellRow({
    work: `memory while reading ${size} MB about a drive`,
    must: '< 250 MB',
    aim: '< 150 MB',
    measured: `${peakMb} MB at its peak`,
    reference: `Node doing nothing ${bareMb.toFixed(0)} MB: ${(peakMb / bareMb).toFixed(1)} ×`,
  });
}

async function seconds(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return (performance.now() - start) / 1000;
}
