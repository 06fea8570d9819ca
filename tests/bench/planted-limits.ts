/**
 * Limits planted on real extracts: on ways and nodes of random drives, where each must be found, and on everything
 * near the drive that is not driven and for the other direction, where none may be. Also the extracts' own plain
 * limits, read here by a few lines of their own: each that binds must be found. Argument: part of an extract's name.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkDrive } from '../../geo/check.ts';
import type { Stretch } from '../../geo/drive/drive.ts';
import { lineBetween } from '../../geo/drive/line-between.ts';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import { nodesAlong } from '../../geo/drive/nodes-along.ts';
import type { Finding } from '../../geo/report/report.ts';
import type { Roads, Tags } from '../../geo/roads/roads.ts';
import { readVehicle } from '../../geo/vehicle/read-vehicle.ts';
import { openMap } from '../../main/services/map/open-map.ts';
import { randomDrive, seeded, trackOf } from '../support/random-drives.ts';

const DRIVES = 30;
const PLANTS_PER_DRIVE = 6;
const CITY = /berlin|monaco/;
const NEAR_DEG = 0.001;

/** What is planted, and the subject that must speak. `<>` stands for the driven direction, `><` for the other. */
const ON_WAYS: readonly { readonly subject: string; readonly tags: Tags }[] = [
  { subject: 'height', tags: { maxheight: '2.6' } },
  { subject: 'height', tags: { 'maxheight:<>': '8\'6"' } },
  { subject: 'height', tags: { 'maxheight:physical': '2.7 m' } },
  { subject: 'width', tags: { maxwidth: '2.1' } },
  { subject: 'width', tags: { 'maxwidth:physical': '6\'6"' } },
  { subject: 'length', tags: { maxlength: '6' } },
  { subject: 'mass', tags: { maxweight: '3' } },
  { subject: 'mass', tags: { 'maxweightrating:<>': '2.8 t' } },
  { subject: 'axle', tags: { maxaxleload: '1.5' } },
  { subject: 'access', tags: { motor_vehicle: 'no' } },
  { subject: 'access', tags: { 'motor_vehicle:conditional': 'no @ (Mo-Su 00:00-24:00)' } },
  { subject: 'mass', tags: { 'maxweight:conditional': 'none @ destination; 3 @ (06:00-20:00)' } },
  { subject: 'height', tags: { 'maxheight:lanes': '2.5|2.5' } },
];
const ON_NODES: readonly { readonly subject: string; readonly tags: Tags }[] = [
  { subject: 'barrier', tags: { barrier: 'bollard' } },
  { subject: 'barrier', tags: { barrier: 'gate' } },
  { subject: 'height', tags: { barrier: 'height_restrictor', maxheight: '2.3' } },
];
const BESIDE: Tags = {
  maxheight: '1.8',
  maxweight: '1',
  maxwidth: '1.7',
  maxlength: '3',
  maxaxleload: '0.5',
};
const OTHER_WAY: Tags = {
  'maxheight:><': '1.8',
  'maxweight:><': '1',
  'maxwidth:><': '1.7',
  'maxlength:><': '3',
};

const card = readVehicle(readFileSync('sample-routes/vehicles/coach-built-7.4.json', 'utf8'), 'card');
const data = process.env['LANEGAUGE_DATA'];
const only = process.argv[2] ?? '';
if (data)
  for (const file of readdirSync(join(data, 'maps')).filter((name) => name.endsWith('.osm.pbf')))
    if (file.includes(only)) await run(join(data, 'maps', file), file);
if (!data) console.log('LANEGAUGE_DATA is not set: nothing to plant on');

interface Planted {
  readonly subject: string;
  readonly type: 'way' | 'node';
  readonly id: number;
  readonly tags: Tags;
}

async function run(path: string, file: string): Promise<void> {
  const opened = await openMap([path], undefined);
  if (!opened.ok || !card.ok) throw new Error('the map or the card cannot be read');
  const roads = opened.value;
  const random = seeded(11);
  const sum = { planted: 0, missed: 0, own: 0, ownMissed: 0, beside: 0, falseAlarms: 0 };
  for (let made = 0; made < DRIVES; ) {
    const known = randomDrive(
      roads,
      CITY.test(file) ? 1000 + 3000 * random() : 5000 + 25_000 * random(),
      random,
    );
    if (known === undefined) continue;
    made++;
    const route = trackOf(known);
    const drive = followRoads(route, roads);
    const stretches = drive.legs.filter((leg): leg is Stretch => leg.kind === 'stretch');
    const { planted, map, besideIds, otherIds } = plant(roads, drive, stretches, random);
    const input = { route, file, drive, card: card.value, program: 'bench', made: '2027-01-01T00:00:00Z' };
    const findings = checkDrive({ ...input, roads: map }).findings;
    for (const one of planted) {
      sum.planted++;
      if (!findings.some((finding) => speaksOf(finding, one))) {
        sum.missed++;
        console.log(`    missed ${one.type} ${one.id} ${JSON.stringify(one.tags)}`);
      }
    }
    sum.beside += besideIds.size + otherIds.size;
    for (const finding of findings)
      if (
        finding.osm.some(({ type, id }) => type === 'way' && besideIds.has(id)) &&
        carries(finding, BESIDE)
      ) {
        sum.falseAlarms++;
        console.log(`    false alarm ${finding.id}: ${finding.say}`);
      } else if (Object.keys(finding.tags).some((key) => otherIds.get(finding.osm[0]?.id ?? 0)?.[key])) {
        sum.falseAlarms++;
        console.log(`    false alarm, other direction, ${finding.id}: ${finding.say}`);
      }
    const own = checkDrive({ ...input, roads }).findings;
    for (const one of ownLimits(roads, stretches)) {
      sum.own++;
      if (!own.some((finding) => speaksOf(finding, one))) {
        sum.ownMissed++;
        console.log(`    missed the map's own ${one.type} ${one.id} ${JSON.stringify(one.tags)}`);
      }
    }
  }
  console.log(
    `${file.padEnd(26)} planted ${sum.planted}, missed ${sum.missed}; beside or for the other direction ${sum.beside}, ` +
      `false alarms ${sum.falseAlarms}; the map's own plain limits that bind ${sum.own}, missed ${sum.ownMissed}`,
  );
}

function plant(
  roads: Roads,
  drive: Parameters<typeof lineBetween>[0],
  stretches: readonly Stretch[],
  random: () => number,
) {
  const tags = [...roads.ways.tags];
  const nodeTags = new Map(roads.nodes.tags);
  const planted: Planted[] = [];
  const idOf = (way: number) => roads.ways.id[way]!;
  const drivenIds = new Set(stretches.map(({ way }) => idOf(way)));
  const usedIds = new Set<number>();
  for (let i = 0; i < PLANTS_PER_DRIVE; i++) {
    const stretch = stretches[Math.floor(random() * stretches.length)];
    if (stretch === undefined || stretch.toM - stretch.fromM < 20 || usedIds.has(idOf(stretch.way))) continue;
    usedIds.add(idOf(stretch.way));
    const inner = nodesAlong(stretch, roads).filter(
      ({ atM, node }) => atM > stretch.fromM + 1 && atM < stretch.toM - 1 && !isJunction(roads, node),
    );
    const node = inner[Math.floor(random() * inner.length)]?.node;
    if (random() < 0.3 && node !== undefined) {
      const what = ON_NODES[Math.floor(random() * ON_NODES.length)] as (typeof ON_NODES)[number];
      nodeTags.set(node, what.tags);
      planted.push({ ...what, type: 'node', id: roads.nodes.id[node]! });
    } else {
      const what = ON_WAYS[Math.floor(random() * ON_WAYS.length)] as (typeof ON_WAYS)[number];
      const set = directed(what.tags, stretch.forward);
      tags[stretch.way] = { ...stripLimits(tags[stretch.way] ?? {}), ...set };
      planted.push({ subject: what.subject, tags: set, type: 'way', id: idOf(stretch.way) });
    }
  }
  const bothWays = new Set<number>();
  for (const a of stretches)
    for (const b of stretches) if (a.way === b.way && a.forward !== b.forward) bothWays.add(idOf(a.way));
  const otherIds = new Map<number, Tags>();
  for (const { way, forward } of stretches) {
    const id = idOf(way);
    if (usedIds.has(id) || bothWays.has(id)) continue;
    const set = directed(OTHER_WAY, forward);
    tags[way] = { ...tags[way], ...set };
    otherIds.set(id, set);
  }
  const besideIds = new Set<number>();
  for (const [lon, lat] of lineBetween(drive, roads, 0, drive.lengthM))
    for (const { way } of roads.index.inBox(
      lat - NEAR_DEG,
      lon - NEAR_DEG,
      lat + NEAR_DEG,
      lon + NEAR_DEG,
      'driven',
    ))
      if (!drivenIds.has(idOf(way)) && !besideIds.has(idOf(way))) {
        besideIds.add(idOf(way));
        tags[way] = { ...tags[way], ...BESIDE };
      }
  const map: Roads = { ...roads, ways: { ...roads.ways, tags }, nodes: { ...roads.nodes, tags: nodeTags } };
  return { planted, map, besideIds, otherIds };
}

function directed(tags: Tags, forward: boolean): Tags {
  const driven = forward ? 'forward' : 'backward';
  const other = forward ? 'backward' : 'forward';
  return Object.fromEntries(
    Object.entries(tags).map(([key, value]) => [key.replace('<>', driven).replace('><', other), value]),
  );
}

/** The way's own limits would win over or fall together with the planted one. */
function stripLimits(tags: Tags): Tags {
  return Object.fromEntries(
    Object.entries(tags).filter(([key]) => !/max|access|vehicle|motor|lanes|conditional/.test(key)),
  );
}

function isJunction(roads: Roads, node: number): boolean {
  let uses = 0;
  const lat = roads.nodes.lat[node]!;
  const lon = roads.nodes.lon[node]!;
  for (const { way, seg } of roads.index.inBox(lat, lon, lat, lon, 'driven')) {
    const at = roads.ways.start[way]! + seg;
    if (roads.ways.refs[at] === node || roads.ways.refs[at + 1] === node) uses++;
  }
  return uses > 2;
}

function speaksOf(finding: Finding, { subject, type, id }: Planted): boolean {
  return finding.subject === subject && finding.osm.some((osm) => osm.type === type && osm.id === id);
}

function carries(finding: Finding, tags: Tags): boolean {
  return Object.entries(tags).some(([key, value]) => finding.tags[key] === value);
}

/** Plain figures only, with a reading of this bench's own: what binds a 7.4 m coach-built 3.05 m high, 3.5 t. */
function ownLimits(roads: Roads, stretches: readonly Stretch[]): Planted[] {
  const binds: readonly [string, string, number][] = [
    ['maxheight', 'height', 3.1],
    ['maxwidth', 'width', 2.32],
    ['maxlength', 'length', 8.1],
    ['maxweight', 'mass', 3.5],
    ['maxweightrating', 'mass', 3.5],
    ['maxaxleload', 'axle', 1.85],
  ];
  return stretches.flatMap(({ way }) =>
    binds.flatMap(([key, subject, needs]): Planted[] => {
      const text = roads.ways.tags[way]?.[key];
      if (text === undefined || !/^\d+(\.\d+)?$/.test(text) || Number(text) >= needs) return [];
      return [{ subject, type: 'way', id: roads.ways.id[way]!, tags: { [key]: text } }];
    }),
  );
}
