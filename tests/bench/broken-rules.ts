/**
 * Drives that break a rule on purpose, on every real extract: each turn that a restriction forbids, driven with 200 m
 * before and after; and stretches driven against a one-way. As they are, simplified to 10 m, and moved by a smooth
 * field of 5 m as another map would draw them. Prints how many are followed where they were drawn, and how many of the
 * broken rules are told. Arguments: part of an extract's name; -v lists what is not.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import { roadGraph } from '../../geo/graph/road-graph.ts';
import type { Roads } from '../../geo/roads/roads.ts';
import { openMap } from '../../main/services/map/open-map.ts';
import { driveThrough, isCarRoad, isDriven } from '../support/drive-through.ts';
import { displace, type KnownDrive, seeded, simplify, trackOf } from '../support/random-drives.ts';
import { drivenOf, scoreMatch } from '../support/score-match.ts';

const MOST = 150;
/** Wrong by less than this is where a drive's end lies, or a corner. */
const TELL_M = 12;

interface Breaking {
  readonly known: KnownDrive;
  /** the restriction broken; undefined: a one-way */
  readonly restriction?: number;
  /** a directed edge driven against its one-way */
  readonly against?: number;
}

const verbose = process.argv.includes('-v');
const only = process.argv.slice(2).find((argument) => argument !== '-v') ?? '';
const data = process.env['LANEGAUGE_DATA'];
if (data)
  for (const file of readdirSync(join(data, 'maps')).filter((name) => name.endsWith('.osm.pbf')))
    if (file.includes(only)) await run(join(data, 'maps', file), file);
if (!data) console.log('LANEGAUGE_DATA is not set: no rules to break');

async function run(path: string, file: string): Promise<void> {
  const opened = await openMap([path], undefined);
  if (!opened.ok) throw new Error(opened.error.message);
  const roads = opened.value;
  const random = seeded(9);
  const turns = brokenTurns(roads, random);
  const against = drivesAgainst(roads, random);
  console.log(file);
  for (const [what, breaking] of [
    ['turns forbidden', turns],
    ['against one-way', against],
  ] as const) {
    measure(`${what}, dense`, breaking, roads, (known) => known);
    measure(`${what}, simplified 10 m`, breaking, roads, (known) => simplify(known, 10));
    measure(`${what}, moved 5 m`, breaking, roads, (known) => displace(known, 5, random));
  }
}

function brokenTurns(roads: Roads, random: () => number): Breaking[] {
  const graph = roadGraph(roads);
  const found: Breaking[] = [];
  const all = [...graph.forbidden].flatMap(([into, outs]) =>
    [...outs].flatMap(([outOf, { restriction, always }]) =>
      always && isDriven(graph, into) && isDriven(graph, outOf) ? [{ into, outOf, restriction }] : [],
    ),
  );
  for (const { into, outOf, restriction } of sample(all, random)) {
    const known = driveThrough(roads, [into, outOf], random);
    if (known !== undefined) found.push({ known, restriction: restriction.id });
  }
  return found;
}

function drivesAgainst(roads: Roads, random: () => number): Breaking[] {
  const graph = roadGraph(roads);
  const all: number[] = [];
  for (let directed = 0; directed < 2 * graph.edgeCount; directed++)
    if (graph.wrongWay[directed] === 1 && graph.lengthM[directed >> 1]! > 40 && isCarRoad(graph, directed))
      all.push(directed);
  const found: Breaking[] = [];
  for (const directed of sample(all, random)) {
    const known = driveThrough(roads, [directed], random);
    if (known !== undefined) found.push({ known, against: directed });
  }
  return found;
}

function sample<T>(all: readonly T[], random: () => number): T[] {
  const rest = [...all];
  const taken: T[] = [];
  while (rest.length > 0 && taken.length < MOST)
    taken.push(...rest.splice(Math.floor(random() * rest.length), 1));
  return taken;
}

function measure(
  what: string,
  drives: readonly Breaking[],
  roads: Roads,
  drawn: (known: KnownDrive) => { readonly lat: readonly number[]; readonly lon: readonly number[] },
): void {
  let [followed, told] = [0, 0];
  for (const { known, restriction, against } of drives) {
    const drive = followRoads(trackOf(drawn(known)), roads);
    const truth = new Map<number, number>();
    for (const { directed, fromM, toM } of known.pieces)
      truth.set(directed, (truth.get(directed) ?? 0) + toM - fromM);
    const matched = drivenOf(drive, roads);
    const { missedM, addedM } = scoreMatch(truth, matched);
    const isFollowed = missedM + addedM < TELL_M;
    const isTold =
      restriction !== undefined
        ? drive.brokenTurns.some((turn) => turn.restriction.id === restriction)
        : (matched.get(against!) ?? 0) > 0.5 * (truth.get(against!) ?? 0);
    if (isFollowed) followed++;
    if (isTold) told++;
    if (verbose && (!isFollowed || !isTold))
      tell(what, { known, ...given(restriction, against) }, roads, truth, matched);
  }
  console.log(`  ${what.padEnd(36)} ${drives.length}: followed ${followed}, told ${told}`);
}

function given(restriction: number | undefined, against: number | undefined) {
  return {
    ...(restriction === undefined ? {} : { restriction }),
    ...(against === undefined ? {} : { against }),
  };
}

function tell(
  what: string,
  breaking: Breaking,
  roads: Roads,
  truth: ReadonlyMap<number, number>,
  matched: ReadonlyMap<number, number>,
): void {
  const graph = roadGraph(roads);
  const wrong: string[] = [];
  for (const edge of new Set([...truth.keys(), ...matched.keys()])) {
    const moreM = (matched.get(edge) ?? 0) - (truth.get(edge) ?? 0);
    const way = graph.way[edge >> 1]!;
    if (Math.abs(moreM) > 3)
      wrong.push(
        `${moreM > 0 ? 'added' : 'missed'} ${Math.abs(moreM).toFixed(0)} m of ${roads.ways.id[way]}${edge % 2 === 0 ? '+' : '-'} (${roads.ways.tags[way]?.['highway']})`,
      );
  }
  const at = breaking.known.lat[breaking.known.lat.length >> 1]!.toFixed(5);
  console.log(
    `    ${what} ${breaking.restriction ?? `edge ${breaking.against}`} near ${at}: ${wrong.slice(0, 6).join(', ')}`,
  );
}
