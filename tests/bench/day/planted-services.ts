/**
 * Days on real roads: random drives with places to empty tanks planted beside roads near them, each with hours of its own;
 * leave times on ordinary days and in nights when the clocks change. One place is taken into each drive, which is then
 * followed and checked anew: nothing may be barred that was not before, the stop must be met at the minute told, open or
 * not as its hours say, and its latest leaving must be the return hour less an independent sum.
 * Arguments: part of an extract's name, days per extract.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type CheckInput, checkDrive } from '../../../geo/check.ts';
import type { ServiceOnWay } from '../../../geo/day/service.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import { readLeaving, zoneFor } from '../../../geo/drive/times/leaving.ts';
import { timesOf } from '../../../geo/drive/times/times-of.ts';
import { drivenAt } from '../../../geo/drive/times/timetable.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import { type Roads, WAY_KIND } from '../../../geo/roads/roads.ts';
import type { ServicePoint } from '../../../geo/services/point.ts';
import { readVehicle } from '../../../geo/vehicle/read-vehicle.ts';
import { servicesNear } from '../../../geo/wayround/stop/services-near.ts';
import { routeWithWay } from '../../../geo/wayround/take-way.ts';
import { openMap } from '../../../main/services/map/open-map.ts';
import { randomDrive, seeded, trackOf } from '../../support/random-drives.ts';
import { tellRow } from '../table.ts';

const DATES = ['2027-06-16', '2027-03-27', '2027-03-28', '2027-10-30', '2027-10-31'];
const NEAR_DEG = 0.02;

const all = { days: 0, found: 0, taken: 0, detours: 0, wrong: 0 };
const card = readVehicle(readFileSync('sample-routes/vehicles/coach-built-7.4.json', 'utf8'), 'card');
const data = process.env['LANEGAUGE_DATA'];
const [only = '', count = '10'] = process.argv.slice(2);
if (data)
  for (const file of readdirSync(join(data, 'maps')).filter((name) => name.endsWith('.osm.pbf')))
    if (file.includes(only)) await run(join(data, 'maps', file), file);
if (data) {
  tellRow({
    work: 'days on the extracts with planted places: one taken into each drive',
    must: 'reached legally, at the minute told, open as its hours say, latest leaving right',
    aim: '',
    measured: `${all.days} days, ${all.found} places reached, ${all.taken} taken (${all.detours} by a detour): ${all.wrong} wrong`,
    reference: 'the drive followed and checked anew; sums and clocks of the bench’s own',
  });
  if (all.wrong > 0) process.exitCode = 1;
}
if (!data) console.log('LANEGAUGE_DATA is not set: nothing to plant on');

async function run(path: string, file: string): Promise<void> {
  const opened = await openMap([path], undefined);
  if (!opened.ok) throw new Error('the map cannot be read');
  const roads = opened.value;
  const random = seeded(57);
  const draw = (most: number) => Math.floor(random() * most);
  const ms: number[] = [];
  let tries = 0;
  for (let day = 0; day < Number(count) && tries < 20 * Number(count); tries++) {
    const known = randomDrive(roads, /berlin|monaco/.test(file) ? 3_000 : 12_000, random);
    if (known === undefined) continue;
    const hour = String(draw(20)).padStart(2, '0');
    const leaveAt = `${DATES[day % DATES.length]}T${hour}:${String(draw(60)).padStart(2, '0')}`;
    const check = checkOf(roads, trackOf(known), leaveAt, {
      stops: [],
      homeBy: `${leaveAt.slice(0, 11)}23:50`,
    });
    if (check === undefined) continue;
    const hours = { opens: draw(10), closes: 11 + draw(12) };
    const points = plantNear(roads, check, hours, random);
    if (points.length === 0) continue;
    day++;
    all.days++;
    const report = checkDrive(check);
    const begin = process.cpuUsage();
    const found = servicesNear({ check, report, points, wanted: ['cassette'] });
    ms.push(process.cpuUsage(begin).user / 1000);
    all.found += found.services.length;
    const [service] = found.services;
    if (service === undefined) continue;
    all.taken++;
    if (service.way !== undefined) all.detours++;
    const wrong = faultsOf(check, report, service, { leaveAt, ...hours });
    if (wrong.length > 0) all.wrong++;
    for (const one of wrong) console.log(`    ${file}, day ${day}, ${leaveAt}: ${one}`);
  }
  ms.sort((a, b) => a - b);
  console.log(
    `${file}: ${ms.length} days; looking for places ${Math.round(ms[ms.length >> 1] ?? 0)} ms median`,
  );
}

function checkOf(
  roads: Roads,
  route: CheckInput['route'],
  leaveAt: string,
  day: NonNullable<CheckInput['day']>,
): CheckInput | undefined {
  if (!card.ok) throw new Error('the card cannot be read');
  const drive = followRoads(route, roads);
  const leaving = readLeaving(leaveAt, drive, roads);
  if (!leaving.ok || drive.legs.length === 0) return undefined;
  const made = { program: 'bench', made: '2027-01-01T00:00:00Z' };
  return { route, file: 'bench', drive, roads, card: card.value, leaving: leaving.value, day, ...made };
}

/** Three waste stations some metres beside roads near the drive. */
function plantNear(
  { ways, nodes }: Roads,
  { route }: CheckInput,
  { opens, closes }: { readonly opens: number; readonly closes: number },
  random: () => number,
): ServicePoint[] {
  const hours = `Mo-Su,PH ${String(opens).padStart(2, '0')}:00-${closes}:00`;
  const points: ServicePoint[] = [];
  for (let tries = 0; tries < 4000 && points.length < 3; tries++) {
    const way = Math.floor(random() * ways.count);
    if (ways.kind[way] !== WAY_KIND.road) continue;
    const node = ways.refs[ways.start[way]! + Math.floor(random() * 2)]!;
    const [lat, lon] = [nodes.lat[node]! + 0.0001, nodes.lon[node]!];
    const segment = route.segments[0];
    if (!segment?.lat.some((each, i) => Math.abs(each - lat) + Math.abs(segment.lon[i]! - lon) < NEAR_DEG))
      continue;
    const osm = { type: 'node' as const, id: -1 - points.length };
    const tags = {
      amenity: 'sanitary_dump_station',
      'sanitary_dump_station:basin': 'yes',
      opening_hours: hours,
    };
    points.push({ osm, kind: 'waste station', lat, lon, tags });
  }
  return points;
}

interface Facts {
  readonly leaveAt: string;
  readonly opens: number;
  readonly closes: number;
}

/** What does not hold of a place once it is in the drive. */
function faultsOf(check: CheckInput, before: DriveReport, service: ServiceOnWay, facts: Facts): string[] {
  const { way, stop } = service;
  const route = way === undefined ? check.route : routeWithWay(check, way);
  const homeBy = check.day?.homeBy ?? '';
  const taken = checkOf(check.roads, route, facts.leaveAt, { stops: [stop], homeBy });
  if (taken === undefined) return ['the drive cannot be followed'];
  const report = checkDrive(taken);
  const placeless = ({ findings }: DriveReport) =>
    findings
      .filter(({ level }) => level === 'barred')
      .map(({ subject, kind, osm }) => JSON.stringify([subject, kind, osm]));
  const known = new Set(placeless(before));
  const wrong = placeless(report)
    .filter((bar) => !known.has(bar))
    .map((bar) => `barred: ${bar}`);
  const [met] = report.day?.stops ?? [];
  if (met === undefined) return [...wrong, 'the stop is not met'];
  const apartMin = Math.abs(Date.parse(met.arriveAt ?? '') - Date.parse(service.arriveAt ?? '')) / 60_000;
  if (!(apartMin <= 1)) wrong.push(`there at ${met.arriveAt}, told ${service.arriveAt}`);
  const minutes = Number(met.arriveAt?.slice(11, 13)) * 60 + Number(met.arriveAt?.slice(14, 16));
  const isOpen = minutes >= 60 * facts.opens && minutes < 60 * facts.closes ? 'open' : 'closed';
  if (met.open?.is !== isOpen) wrong.push(`${met.open?.is} at ${met.arriveAt} by ${stop.hours}`);
  const times = timesOf(taken.drive, taken.roads, taken.card);
  const zone = zoneFor(stop.lat, stop.lon);
  const onS = times.totalS - drivenAt(times, met.atM);
  const latest = shown(momentOf(homeBy, zone) - 1150 * onS, zone);
  if (met.latestLeaveAt?.slice(0, 16) !== latest) wrong.push(`leave by ${met.latestLeaveAt}, not ${latest}`);
  return wrong;
}

/** By the platform's own calendar alone: `2027-06-12T09:42`. */
function shown(unixMs: number, timeZone: string): string {
  const format = new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'short' });
  return format.format(unixMs).replace(' ', 'T');
}

/** The moment of a wall time that the clocks of a zone show once. */
function momentOf(wall: string, zone: string): number {
  for (let hours = -3; hours <= 0; hours++) {
    const ms = Date.parse(`${wall}Z`) + 3_600_000 * hours;
    if (shown(ms, zone) === wall) return ms;
  }
  throw new Error(`${wall} is shown at no full hour's offset in ${zone}`);
}
