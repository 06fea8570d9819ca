/**
 * Random drives made from real extracts' own roads, so that the truth is known: as they are, simplified to 10 m, and
 * moved by a smooth field of 5 m as another map would draw them. Prints what share of the length is matched on the
 * right way in the right direction, the wrong length, and the time. Arguments: part of an extract's name; -v lists
 * every drive that is not wholly right.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import { roadGraph } from '../../geo/graph/road-graph.ts';
import type { Roads } from '../../geo/roads/roads.ts';
import { openMap } from '../../main/services/map/open-map.ts';
import {
  displace,
  type KnownDrive,
  randomDrive,
  seeded,
  simplify,
  trackOf,
} from '../support/random-drives.ts';
import { type Driven, drivenOf, scoreMatch } from '../support/score-match.ts';

const DRIVES = 30;
const SEED = 7;
/** Dense cities are small: shorter drives. */
const CITY = /berlin|monaco|mc-/;
const LEAST_PERCENT = 99.5;
/** Wrong by less than this is where a drive's end lies. */
const TELL_M = 8;

const verbose = process.argv.includes('-v');
const only = process.argv.slice(2).find((argument) => argument !== '-v') ?? '';
const data = process.env['LANEGAUGE_DATA'];
if (data)
  for (const file of readdirSync(join(data, 'maps')).filter((name) => name.endsWith('.osm.pbf')))
    if (file.includes(only)) await run(join(data, 'maps', file), file);
if (!data) console.log('LANEGAUGE_DATA is not set: nothing to match');

async function run(path: string, file: string): Promise<void> {
  const opened = await openMap([path], undefined);
  if (!opened.ok) throw new Error(opened.error.message);
  const roads = opened.value;
  console.log(`${file}: ${roadGraph(roads).edgeCount} edges, ${roads.restrictions.length} turn restrictions`);
  const random = seeded(SEED);
  const drives: KnownDrive[] = [];
  while (drives.length < DRIVES) {
    const lengthM = CITY.test(file) ? 1000 + 3000 * random() : 5000 + 25_000 * random();
    const drive = randomDrive(roads, lengthM, random);
    if (drive !== undefined) drives.push(drive);
  }
  const moved = drives.map((drive) => displace(drive, 5, random));
  measure('dense', drives, drives, roads);
  measure(
    'simplified 10 m',
    drives,
    drives.map((drive) => simplify(drive, 10)),
    roads,
  );
  measure('moved 5 m', drives, moved, roads);
}

function measure(
  variant: string,
  drives: readonly KnownDrive[],
  lines: readonly { readonly lat: readonly number[]; readonly lon: readonly number[] }[],
  roads: Roads,
): void {
  const sum = { lengthM: 0, rightM: 0, addedM: 0, off: 0, positions: 0, ms: 0 };
  drives.forEach((known, i) => {
    const line = lines[i];
    if (line === undefined) return;
    const started = performance.now();
    const drive = followRoads(trackOf(line), roads);
    sum.ms += performance.now() - started;
    const truth = truthOf(known);
    const matched = drivenOf(drive, roads);
    const score = scoreMatch(truth, matched);
    sum.lengthM += known.lengthM;
    sum.rightM += score.rightM;
    sum.addedM += score.addedM;
    sum.off += drive.legs.filter((leg) => leg.kind === 'offMap').length;
    sum.positions += line.lat.length;
    if (verbose) tellWrong(`${variant} ${i + 1}`, truth, matched, roads);
  });
  const right = (100 * sum.rightM) / sum.lengthM;
  console.log(
    `  ${variant.padEnd(16)} right ${right.toFixed(3)} % ${right >= LEAST_PERCENT ? 'ok' : `LESS THAN ${LEAST_PERCENT}`}; ` +
      `wrong ways ${((100 * sum.addedM) / sum.lengthM).toFixed(3)} %; off the map ${sum.off}; ` +
      `${(sum.lengthM / 1000).toFixed(0)} km, ${sum.positions} positions; ${((1000 * sum.ms) / sum.lengthM).toFixed(2)} ms/km`,
  );
}

function truthOf(known: KnownDrive): Driven {
  const driven = new Map<number, number>();
  for (const { directed, fromM, toM } of known.pieces)
    driven.set(directed, (driven.get(directed) ?? 0) + toM - fromM);
  return driven;
}

function tellWrong(which: string, truth: Driven, matched: Driven, roads: Roads): void {
  const graph = roadGraph(roads);
  const wrong: string[] = [];
  for (const edge of new Set([...truth.keys(), ...matched.keys()])) {
    const moreM = (matched.get(edge) ?? 0) - (truth.get(edge) ?? 0);
    const way = graph.way[edge >> 1]!;
    const name = `${roads.ways.id[way]}${edge % 2 === 0 ? '+' : '-'} (${roads.ways.tags[way]?.['highway']})`;
    if (Math.abs(moreM) > TELL_M)
      wrong.push(`${moreM > 0 ? 'added' : 'missed'} ${Math.abs(moreM).toFixed(0)} m of ${name}`);
  }
  if (wrong.length > 0) console.log(`    ${which}: ${wrong.slice(0, 8).join(', ')}`);
}
