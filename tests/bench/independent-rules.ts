/**
 * The reports held against a second reading of the same tags, plain on purpose (tests/bench/plain): raw tags from
 * another reader, along the ways each drive was followed on. On every real extract: random drives, and short ones over
 * the ways that carry a limit or a closure, against one-ways, and over forbidden turns. What the plain reading says bars
 * must be in the report as barred or unknown (else missed), and what the report bars must have a ground in the plain reading (else invented).
 * Arguments: part of an extract's name; -v lists each difference.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkDrive } from '../../geo/check.ts';
import type { Stretch } from '../../geo/drive/drive.ts';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import { nodesAlong } from '../../geo/drive/nodes-along.ts';
import { type RoadGraph, roadGraph } from '../../geo/graph/road-graph.ts';
import type { Finding } from '../../geo/report/report.ts';
import type { Roads } from '../../geo/roads/roads.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import { readVehicle } from '../../geo/vehicle/read-vehicle.ts';
import { openMap } from '../../main/services/map/open-map.ts';
import { driveThrough } from '../support/drive-through.ts';
import { type KnownDrive, randomDrive, seeded, trackOf } from '../support/random-drives.ts';
import { accessOn, onewayOn } from './plain/access.ts';
import { limitsOn } from './plain/limits.ts';
import { type RawMap, readRaw } from './plain/raw-map.ts';
import { brokenOn, type Passed } from './plain/turns.ts';

const LONG_DRIVES = 25;
const MOST_SHORT = 120;
const LONG_M = 10_000;
/** A way touched by less than this at a drive's end is not driven. */
const TOUCH_M = 3;
const CARRIES =
  /^(max(height|width|length|weight|weightrating|axleload)|(access|vehicle|motor_vehicle|motorhome)(:|$))/;

/** Kinds the plain reading knows. */
const PLAIN_KINDS = new Set(['limit', 'closed', 'private', 'one-way', 'turn restriction']);

/** One thing the plain reading says of a drive. */
interface Ground {
  readonly subject: string;
  readonly type: 'way' | 'node' | 'relation';
  /** several where each says the same of one turn */
  readonly ids: readonly number[];
  readonly what: string;
  /** false: it may bar, by the plain reading, but need not */
  readonly sure: boolean;
}

const verbose = process.argv.includes('-v');
const only = process.argv.slice(2).find((argument) => argument !== '-v') ?? '';
const data = process.env['LANEGAUGE_DATA'];
const samples = ['coach-built-7.4', 'a-class-4.25t'].map((name) => {
  const read = readVehicle(readFileSync(`sample-routes/vehicles/${name}.json`, 'utf8'), name);
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
});
/** As big as anything on the road, so that nearly every limit binds it. */
const big: VehicleCard = {
  ...samples[0]!,
  name: 'As big as a coach',
  heightM: 4.2,
  widthM: 2.9,
  widthMirrorsM: 3.3,
  widthMirrorsFoldedM: 3,
  lengthM: 18,
  wheelbaseM: 10,
  frontOverhangM: 3,
  rearOverhangM: 5,
  grossKg: 26_000,
  axleKg: { front: 9000, rear: 17_000 },
};
const cards = [...samples, big];
if (data)
  for (const file of readdirSync(join(data, 'maps')).filter((name) => name.endsWith('.osm.pbf')))
    if (file.includes(only)) await run(join(data, 'maps', file), file);
if (!data) console.log('LANEGAUGE_DATA is not set: nothing to compare');

async function run(path: string, file: string): Promise<void> {
  const opened = await openMap([path], undefined);
  if (!opened.ok) throw new Error(opened.error.message);
  const roads = opened.value;
  const raw = await readRaw(path);
  const drives = drivesOn(roads, raw, seeded(17));
  const bySubject = new Map<string, number>();
  const sum = { reports: 0, grounds: 0, missed: 0, barred: 0, invented: 0 };
  for (const known of drives) {
    const route = trackOf(known);
    const drive = followRoads(route, roads);
    const stretches = drive.legs.filter((leg): leg is Stretch => leg.kind === 'stretch');
    for (const card of cards) {
      const { findings } = checkDrive({
        route,
        file,
        drive,
        roads,
        card,
        program: 'bench',
        made: '2027-01-01T00:00:00Z',
      });
      const grounds = groundsOf(roads, raw, stretches, card);
      const sure = grounds.filter((ground) => ground.sure);
      const stern = findings.filter(({ level }) => level === 'barred' || level === 'unknown');
      const missed = sure.filter((ground) => !stern.some((finding) => speaksOf(finding, ground)));
      const barred = findings.filter(isOfPlainKind);
      const invented = barred.filter((finding) => !grounds.some((ground) => speaksOf(finding, ground)));
      sum.reports++;
      for (const { subject } of sure) bySubject.set(subject, (bySubject.get(subject) ?? 0) + 1);
      sum.grounds += sure.length;
      sum.missed += missed.length;
      sum.barred += barred.length;
      sum.invented += invented.length;
      if (!verbose) continue;
      for (const each of missed)
        console.log(`    missed ${each.subject} ${each.type} ${each.ids.join(' ')} ${each.what}`);
      for (const each of invented)
        console.log(`    invented ${each.id} ${JSON.stringify(each.tags)}: ${each.say}`);
    }
  }
  console.log(
    `${file.padEnd(26)} drives ${drives.length}, reports ${sum.reports}; grounds ${sum.grounds} (${[...bySubject].map((each) => each.join(' ')).join(', ')}), missed ${sum.missed}; barred by them ${sum.barred}, invented ${sum.invented}`,
  );
}

function drivesOn(roads: Roads, raw: RawMap, random: () => number): KnownDrive[] {
  const graph = roadGraph(roads);
  const drives: KnownDrive[] = [];
  for (let tries = 0; drives.length < LONG_DRIVES && tries < 40 * LONG_DRIVES; tries++) {
    const known = randomDrive(roads, LONG_M * (0.2 + random()), random);
    if (known !== undefined) drives.push(known);
  }
  const tagged = edgesThat(graph, (directed) => isTagged(roads, raw, graph.way[directed >> 1]!));
  const against = edgesThat(
    graph,
    (directed) => graph.wrongWay[directed] === 1 && graph.lengthM[directed >> 1]! > 40,
  );
  const turns = [...graph.forbidden].flatMap(([into, outs]) =>
    [...outs.keys()].map((outOf) => [into, outOf]),
  );
  for (const middle of [...sample(tagged, random), ...sample(against, random), ...sample(turns, random)]) {
    const known = driveThrough(roads, middle, random);
    if (known !== undefined) drives.push(known);
  }
  return drives;
}

function edgesThat(graph: RoadGraph, wanted: (directed: number) => boolean): number[][] {
  const edges: number[][] = [];
  for (let directed = 0; directed < 2 * graph.edgeCount; directed++)
    if (wanted(directed)) edges.push([directed]);
  return edges;
}

function isTagged(roads: Roads, raw: RawMap, way: number): boolean {
  const tags = raw.ways.get(roads.ways.id[way]!)?.tags ?? {};
  return tags['highway'] !== undefined && Object.keys(tags).some((key) => CARRIES.test(key));
}

function sample<T>(all: readonly T[], random: () => number): T[] {
  const rest = [...all];
  const taken: T[] = [];
  while (rest.length > 0 && taken.length < MOST_SHORT)
    taken.push(...rest.splice(Math.floor(random() * rest.length), 1));
  return taken;
}

function groundsOf(roads: Roads, raw: RawMap, stretches: readonly Stretch[], card: VehicleCard): Ground[] {
  const grounds: Ground[] = [];
  for (const stretch of stretches) {
    const id = roads.ways.id[stretch.way]!;
    const tags = raw.ways.get(id)?.tags ?? {};
    const driven = stretch.toM - stretch.fromM > TOUCH_M;
    const say = (subject: string, what: string, sure: boolean) =>
      grounds.push({
        subject,
        type: 'way',
        ids: [id],
        what,
        sure: sure && driven && tags['highway'] !== undefined,
      });
    for (const { subject, key, value, means } of limitsOn(tags, stretch.forward, card))
      if (means !== 'passes') say(subject, `${key}=${value}`, true);
    const access = accessOn(tags, stretch.forward);
    // the ends of a drive may lie where only some may go
    if (access !== 'open') say('access', `access ${access}`, access === 'closed');
    const oneway = onewayOn(tags, stretch.forward);
    if (oneway === 'against' || oneway === 'perhaps')
      say('access', `one-way ${oneway}`, oneway === 'against');
    for (const node of nodesAlong(stretch, roads)) {
      const nodeId = roads.nodes.id[node.node]!;
      for (const { subject, key, value, means } of limitsOn(raw.nodes.get(nodeId) ?? {}, undefined, card))
        if (means !== 'passes')
          grounds.push({ subject, type: 'node', ids: [nodeId], what: `${key}=${value}`, sure: false });
      const barrier = raw.nodes.get(nodeId)?.['barrier'];
      if (barrier !== undefined)
        grounds.push({ subject: 'access', type: 'node', ids: [nodeId], what: barrier, sure: false });
    }
  }
  for (const ids of brokenOn(
    raw,
    stretches.map((stretch) => passedOf(roads, stretch)),
  ))
    grounds.push({ subject: 'access', type: 'relation', ids, what: 'turn restriction', sure: true });
  // of the others it can only be said that they are there
  const ways = new Set(stretches.map((stretch) => roads.ways.id[stretch.way]!));
  for (const [id, { tags, members }] of raw.relations)
    if (
      tags['type'] === 'restriction' &&
      members.some(({ type, role, ref }) => type === 'way' && role === 'from' && ways.has(ref))
    )
      grounds.push({ subject: 'access', type: 'relation', ids: [id], what: 'turn restriction', sure: false });
  return grounds;
}

/** Where a stretch enters and leaves its way: a node only where it is driven from end to end there. */
function passedOf(roads: Roads, stretch: Stretch): Passed {
  const graph = roadGraph(roads);
  const { start, refs, id } = roads.ways;
  const nodeAt = (alongM: number): number => {
    for (let ref = start[stretch.way]!; ref < start[stretch.way + 1]!; ref++)
      if (Math.abs(graph.alongM[ref]! - alongM) < 0.01) return roads.nodes.id[refs[ref]!]!;
    return 0;
  };
  return { way: id[stretch.way]!, enters: nodeAt(stretch.alongFromM), leaves: nodeAt(stretch.alongToM) };
}

/** Whether a finding is about this ground. */
function speaksOf({ subject, osm }: Finding, ground: Ground): boolean {
  // where another road fits the drive as well, the finding is about that: it names the way and what bars there
  const same =
    subject === ground.subject || subject === 'map' || (ground.subject === 'access' && subject === 'barrier');
  return same && osm.some(({ type, id }) => type === ground.type && ground.ids.includes(id));
}

function isOfPlainKind({ level, subject, kind }: Finding): boolean {
  const isSized =
    subject === 'height' ||
    subject === 'width' ||
    subject === 'length' ||
    subject === 'mass' ||
    subject === 'axle';
  return level === 'barred' && (isSized || subject === 'access') && PLAIN_KINDS.has(kind);
}
