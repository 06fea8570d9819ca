/**
 * Local notes on real extracts: two hundred on random driven roads of each, and one on every bridge without a height that
 * these drives meet. Figures must bar, settle and expire; over the same map moved 20 m and 30 m, renumbered, and with
 * roads taken away, each must follow its road or be lost, as a plain search over all ways nearby has it.
 * Argument: part of an extract's name.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkDrive } from '../../geo/check.ts';
import type { Drive, Stretch } from '../../geo/drive/drive.ts';
import type { Route } from '../../geo/drive/gpx/route.ts';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import { pointAt } from '../../geo/drive/point-at.ts';
import { localFrame } from '../../geo/earth/frame.ts';
import { awayFrom } from '../../geo/earth/segment.ts';
import type { LocalNote } from '../../geo/notes/note.ts';
import type { Roads, Tags } from '../../geo/roads/roads.ts';
import { buildSegmentIndex } from '../../geo/roads/segment-index.ts';
import { readVehicle } from '../../geo/vehicle/read-vehicle.ts';
import { openMap } from '../../main/services/map/open-map.ts';
import { randomDrive, seeded, trackOf } from '../support/random-drives.ts';

const DRIVES = 20;
const NOTES_PER_DRIVE = 10;
const FOLLOWS_M = 25;
const EVERY_THIRD_GONE = 'every third road gone';

const card = readVehicle(readFileSync('sample-routes/vehicles/coach-built-7.4.json', 'utf8'), 'card');
const data = process.env['LANEGAUGE_DATA'];
const only = process.argv[2] ?? '';
if (!data) console.log('LANEGAUGE_DATA is not set: nothing to note');
else
  for (const file of readdirSync(join(data, 'maps')).filter((name) => name.endsWith('.osm.pbf')))
    if (file.includes(only)) await run(join(data, 'maps', file), file);

interface Noted {
  readonly route: Route;
  readonly drive: Drive;
  readonly notes: readonly LocalNote[];
}

async function run(path: string, file: string): Promise<void> {
  const opened = await openMap([path], undefined, {});
  if (!opened.ok) throw new Error(opened.error.message);
  const roads = opened.value;
  const noted = noteDrives(roads, seeded(11));
  const count = noted.reduce((sum, { notes }) => sum + notes.length, 0);
  const told: string[] = [`${file}: ${count} notes on ${noted.length} drives`];
  const maps: readonly (readonly [string, Roads])[] = [
    ['same map', roads],
    ['moved 20 m', moved(roads, 20)],
    ['moved 30 m', moved(roads, 30)],
    ['renumbered', renumbered(roads)],
  ];
  for (const [name, newer] of maps) told.push(follow(name, newer, noted));
  const thin = thinned(roads);
  const anew = noted.map((one) => ({ ...one, drive: followRoads(one.route, thin) }));
  told.push(follow(EVERY_THIRD_GONE, thin, anew));
  told.push(expire(roads, noted), settle(roads, noted));
  console.log(told.join('\n  '));
}

function noteDrives(roads: Roads, random: () => number): Noted[] {
  const noted: Noted[] = [];
  for (let tries = 0; noted.length < DRIVES && tries < 20 * DRIVES; tries++) {
    const known = randomDrive(roads, 8000, random);
    if (known === undefined) continue;
    const route = trackOf(known);
    const drive = followRoads(route, roads);
    const stretches = drive.legs.filter(
      (leg): leg is Stretch =>
        leg.kind === 'stretch' && roads.ways.kind[leg.way] === 0 && leg.toM - leg.fromM > 5,
    );
    if (stretches.length === 0) continue;
    const notes = Array.from({ length: NOTES_PER_DRIVE }, (_, i): LocalNote => {
      const stretch = stretches[Math.floor(random() * stretches.length)] as Stretch;
      const place = pointAt(drive, roads, stretch.fromM + random() * (stretch.toM - stretch.fromM));
      const { name, ref, highway } = roads.ways.tags[stretch.way] ?? {};
      return {
        id: `${noted.length}-${i}`,
        at: { lat: place?.lat ?? 0, lon: place?.lon ?? 0 },
        osm: { type: 'way', id: roads.ways.id[stretch.way]! },
        road: { name, ref, class: highway },
        say: 'measured',
        heightM: 2,
      };
    });
    noted.push({ route, drive, notes });
  }
  return noted;
}

function check(drive: Drive, roads: Roads, localNotes: readonly LocalNote[], made = '2027-06-01T00:00:00Z') {
  if (!card.ok) throw new Error(card.error.message);
  const route = { kind: 'track' as const, name: '', number: 1, segments: [] };
  return checkDrive({ route, file: '', drive, roads, card: card.value, localNotes, program: '', made });
}

/** Each note by itself: of two near each other the lower alone is told. */
function follow(name: string, roads: Roads, noted: readonly Noted[]): string {
  let [bears, lost] = [0, 0];
  const wrong: string[] = [];
  for (const { drive, notes } of noted)
    for (const note of notes) {
      const report = check(drive, roads, [note]);
      const own = report.findings.some(({ level, note: by }) => level === 'barred' && by === note.id);
      const said = report.cautions.some((caution) => caution.includes('is left out'));
      const may = mayFollow(note, roads);
      if (own) bears++;
      if (said) lost++;
      // on another piece of its road it need not be driven; where it may not follow it must not bear, and be told
      // a drive that goes another way now may not come near it
      const mustTell = name !== EVERY_THIRD_GONE;
      if (!may && (own || (mustTell && !said))) wrong.push(`${note.id} bears ${own}, told ${said}, may not`);
      if (may && said) wrong.push(`${note.id} is told lost and may follow`);
      if (name === 'same map' && !own) wrong.push(`${note.id} does not bear`);
    }
  return `${name}: ${bears} bear, ${lost} told lost, ${wrong.length} wrong ${wrong.slice(0, 3).join('; ')}`;
}

/** Its object, or a road of its name or number, or for one without either a road of its class, within 25 m. */
function mayFollow({ at, osm, road }: LocalNote, roads: Roads): boolean {
  const frame = localFrame(at.lat, at.lon);
  const { start, refs, id, kind, count, tags } = roads.ways;
  const { lat, lon } = roads.nodes;
  const point = (ref: number) => frame.toXY(lat[refs[ref]!]!, lon[refs[ref]!]!);
  for (let way = 0; way < count; way++) {
    const near = kind[way] === 0 && Math.abs(lat[refs[start[way]!]!]! - at.lat) < 0.5;
    if (!near || !(id[way] === osm?.id || isSame(road, tags[way] ?? {}))) continue;
    for (let ref = start[way]!; ref + 1 < start[way + 1]!; ref++)
      if (awayFrom({ x: 0, y: 0 }, point(ref), point(ref + 1)) <= FOLLOWS_M) return true;
  }
  return false;
}

function isSame(road: LocalNote['road'], { name, ref, highway }: Tags): boolean {
  const parts = (text: string | undefined) => (text === undefined ? [] : text.toLowerCase().split(/ *; */));
  const { name: ours, ref: number, class: of } = road ?? {};
  if (ours === undefined && number === undefined) return highway === of;
  return (
    parts(ours).some((part) => parts(name).includes(part)) ||
    parts(number).some((part) => parts(ref).includes(part))
  );
}

function expire(roads: Roads, noted: readonly Noted[]): string {
  let wrong = 0;
  for (const { drive, notes } of noted) {
    const ended = notes.map((note) => ({ ...note, until: '2027-05-31' }));
    const own = check(drive, roads, ended).findings.filter(({ note }) => note !== undefined);
    if (own.length > 0 || check(drive, roads, ended, '2027-05-31T23:00:00Z').verdict !== 'barred') wrong++;
  }
  return `ended: ${wrong} drives wrong`;
}

function settle(roads: Roads, noted: readonly Noted[]): string {
  let [settled, wrong] = [0, 0];
  for (const { drive } of noted)
    for (const finding of check(drive, roads, []).findings) {
      if (finding.kind !== 'bridge above') continue;
      const way = finding.osm[0]?.id ?? 0;
      const note: LocalNote = {
        id: 'n',
        at: finding.at,
        osm: { type: 'way', id: way },
        say: 'measured',
        heightM: 4.5,
        answers: { finding: finding.id },
      };
      const after = check(drive, roads, [note]).findings.find(({ id }) => id === finding.id);
      if (after?.level === 'care' && after.note === 'n') settled++;
      else wrong++;
    }
  return `bridges without a height: ${settled} settled, ${wrong} not`;
}

function withNodes(roads: Roads, lat: Float64Array): Roads {
  const nodes = { ...roads.nodes, lat };
  return { ...roads, nodes, index: buildSegmentIndex(nodes, roads.ways) };
}

function moved(roads: Roads, byM: number): Roads {
  return withNodes(
    roads,
    roads.nodes.lat.map((lat) => lat + byM / 111_195),
  );
}

function renumbered(roads: Roads): Roads {
  return { ...roads, ways: { ...roads.ways, id: roads.ways.id.map((id) => id + 1e10) } };
}

/** Every third way is drawn elsewhere, under another id and name. */
function thinned(roads: Roads): Roads {
  const { ways } = roads;
  const isGone = (way: number) => ways.id[way]! % 3 === 0;
  const kind = ways.kind.map((each, way) => (isGone(way) ? 2 : each));
  const thin = { ...ways, kind };
  return { ...roads, ways: thin, index: buildSegmentIndex(roads.nodes, thin) };
}
