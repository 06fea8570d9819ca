/**
 * Ways round planted bars: on each extract drives with a limit planted on their way, each asked for the ways past it.
 * Every way is driven anew: its track is matched to the roads and checked, and no bar may stand on it. Every bar must have a
 * way or a reason, and not both; and what the search past it finds must cost no more than plain Dijkstra's answer and the
 * slack that keeps most of the drive. Arguments: part of an extract's name, drives per extract.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type CheckInput, checkDrive } from '../../../geo/check.ts';
import type { Drive, Stretch } from '../../../geo/drive/drive.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { lineBetween } from '../../../geo/drive/line-between.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import type { Finding } from '../../../geo/report/finding.ts';
import type { WayRound } from '../../../geo/report/way-round.ts';
import type { Roads, Tags } from '../../../geo/roads/roads.ts';
import { readVehicle } from '../../../geo/vehicle/read-vehicle.ts';
import { barsOf } from '../../../geo/wayround/past/bars.ts';
import { questionPast } from '../../../geo/wayround/past/find-detour.ts';
import { firstLessons } from '../../../geo/wayround/past/settle.ts';
import { layTrip, type PastInput } from '../../../geo/wayround/past/trip.ts';
import { findWaysRound } from '../../../geo/wayround/past-bar.ts';
import { searchForward } from '../../../geo/wayround/search/search-forward.ts';
import { openMap } from '../../../main/services/map/open-map.ts';
import { randomDrive, seeded, trackOf } from '../../support/random-drives.ts';
import { tellRow } from '../table.ts';

const CITY = /berlin|monaco/;
const BARS: readonly Tags[] = [
  { maxheight: '2.2' },
  { maxweight: '2' },
  { motor_vehicle: 'no' },
  { maxwidth: '1.9' },
];

const all = { drives: 0, bars: 0, passed: 0, ways: 0, illegal: 0, neither: 0, both: 0, dearer: 0, sought: 0 };
const card = readVehicle(readFileSync('sample-routes/vehicles/coach-built-7.4.json', 'utf8'), 'card');
const data = process.env['LANEGAUGE_DATA'];
const [only = '', count = '60'] = process.argv.slice(2);
if (data)
  for (const file of readdirSync(join(data, 'maps')).filter((name) => name.endsWith('.osm.pbf')))
    if (file.includes(only)) await run(join(data, 'maps', file), file);
if (data) {
  tellRow({
    work: 'planted bars on the extracts: passed or a reason',
    must: 'every way legal and best',
    aim: '',
    measured: `${all.bars} bars on ${all.drives} drives: ${all.passed} passed by ${all.ways} ways; ${all.neither + all.both} without one answer, ${all.illegal} ways barred when driven anew, ${all.dearer} dearer`,
    reference: 'the check of each way matched anew; plain Dijkstra',
  });
  if (all.illegal + all.neither + all.both + all.dearer > 0) process.exitCode = 1;
}
if (!data) console.log('LANEGAUGE_DATA is not set: nothing to plant on');

interface Planted {
  readonly route: Route;
  readonly drive: Drive;
}

async function run(path: string, file: string): Promise<void> {
  const opened = await openMap([path], undefined);
  if (!opened.ok || !card.ok) throw new Error('the map or the card cannot be read');
  const random = seeded(23);
  const { drives, roads } = plant(opened.value, Number(count), file, random);
  const ms: number[] = [];
  const sum = { bars: 0, passed: 0, ways: 0, illegal: 0, neither: 0, both: 0, dearer: 0, sought: 0 };
  const reasons = new Map<string, number>();
  for (const { route, drive } of drives) {
    const check = {
      route,
      file,
      drive,
      roads,
      card: card.value,
      program: 'bench',
      made: '2027-01-01T00:00:00Z',
    };
    const report = checkDrive(check);
    const barred = report.findings.filter(({ level }) => level === 'barred');
    if (barred.length === 0) continue;
    const begin = process.cpuUsage();
    const { waysRound, noWayRound } = findWaysRound({ check, report });
    ms.push(process.cpuUsage(begin).user / 1000);
    for (const dearer of dearerThanPlain({ check, report })) {
      sum.sought++;
      if (dearer) sum.dearer++;
    }
    sum.ways += waysRound.length;
    for (const { id } of barred) {
      sum.bars++;
      const passed = waysRound.some(({ findingIds }) => findingIds.includes(id));
      const none = noWayRound.filter(({ findingIds }) => findingIds.includes(id));
      if (passed) sum.passed++;
      for (const { kind } of none) reasons.set(kind, (reasons.get(kind) ?? 0) + 1);
      if (!passed && none.length === 0) sum.neither++;
      if (passed && none.length > 0) sum.both++;
    }
    for (const way of waysRound) {
      const bars = barsDrivenAnew(way, check);
      if (bars.length === 0) continue;
      sum.illegal++;
      console.log(
        `    drive ${ms.length}: ${way.fromM.toFixed(0)} to ${way.toM.toFixed(0)} m: ${bars.map(({ id, say }) => `${id} ${say}`).join('; ')}`,
      );
    }
  }
  ms.sort((a, b) => a - b);
  const at = (share: number) => Math.round(ms[Math.floor(share * (ms.length - 1))] ?? 0);
  for (const key of ['drives', ...Object.keys(sum)] as (keyof typeof all)[])
    all[key] += key === 'drives' ? ms.length : sum[key as keyof typeof sum];
  console.log(
    `${file.padEnd(26)} ${sum.bars} bars on ${ms.length} drives: ${sum.passed} passed by ${sum.ways} ways, ` +
      `illegal ${sum.illegal}, neither ${sum.neither}, both ${sum.both}, dearer ${sum.dearer} of ${sum.sought}; ` +
      `none: ${JSON.stringify(Object.fromEntries(reasons))}; median ${at(0.5)} ms, p95 ${at(0.95)} ms, most ${at(1)} ms`,
  );
}

/** For each group of bars that a way is looked for past: whether a way found costs more than plain Dijkstra's and the slack. */
function* dearerThanPlain(input: PastInput): Generator<boolean> {
  const trip = layTrip(input);
  for (const { findings, fromM, toM } of barsOf(trip.wanted)) {
    const stretch = { lowM: 0, fromM, toM, highM: trip.drive.lengthM };
    const question = questionPast(trip, stretch, trip.terms, firstLessons(trip, findings, false).overlay);
    const found = searchForward(question);
    const { slack, leftTenths: _, ...plain } = question;
    const best = searchForward(plain);
    if (found.states === undefined || best.states === undefined)
      yield (found.states === undefined) !== (best.states === undefined);
    else
      yield found.costTenths < best.costTenths || found.costTenths > best.costTenths + (slack?.tenths ?? 0);
  }
}

/** Bars that the check finds on a way when the whole trip is matched from its line. */
function barsDrivenAnew({ fromM, toM, lengthM, path }: WayRound, check: CheckInput): Finding[] {
  const { drive, roads } = check;
  const line = [
    ...lineBetween(drive, roads, 0, fromM).map(([lon, lat]) => [lat, lon] as const),
    ...path,
    ...lineBetween(drive, roads, toM, drive.lengthM).map(([lon, lat]) => [lat, lon] as const),
  ];
  const segment = {
    lat: Float64Array.from(line, ([lat]) => lat),
    lon: Float64Array.from(line, ([, lon]) => lon),
    timeMs: new Float64Array(line.length).fill(Number.NaN),
  };
  const route: Route = { name: '', kind: 'track', number: 1, segments: [segment] };
  const anew = checkDrive({ ...check, route, drive: followRoads(route, roads) });
  return anew.findings.filter(
    (finding) => finding.level === 'barred' && finding.toM > fromM + 5 && finding.fromM < fromM + lengthM - 5,
  );
}

/** Drives along the map as it is, and the map with a bar on the middle of each. */
function plant(
  roads: Roads,
  wanted: number,
  file: string,
  random: () => number,
): { drives: Planted[]; roads: Roads } {
  const tags = [...roads.ways.tags];
  const drives: Planted[] = [];
  for (let tries = 0; drives.length < wanted && tries < 20 * wanted; tries++) {
    const known = randomDrive(
      roads,
      CITY.test(file) ? 1000 + 3000 * random() : 5000 + 45_000 * random(),
      random,
    );
    if (known === undefined) continue;
    const route = trackOf(known);
    const drive = followRoads(route, roads);
    const stretches = drive.legs.filter((leg): leg is Stretch => leg.kind === 'stretch');
    const barred = stretches[Math.floor(stretches.length * (0.2 + 0.6 * random()))];
    if (barred === undefined) continue;
    tags[barred.way] = { ...tags[barred.way], ...BARS[drives.length % BARS.length] };
    drives.push({ route, drive });
  }
  return { drives, roads: { ...roads, ways: { ...roads.ways, tags } } };
}
