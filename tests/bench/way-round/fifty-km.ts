/**
 * Ways round bars planted on drives of 50 km over a map of 200,000 roads, made of the extracts in LANEGAUGE_DATA/maps over
 * and over. Times are of the processor, which a busy machine does not lengthen. The first question on a map lays its turn
 * graph and is told apart; the vehicle's roads are judged as searches come to them. Argument: how many drives.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkDrive } from '../../../geo/check.ts';
import type { Drive, Stretch } from '../../../geo/drive/drive.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { readVehicle } from '../../../geo/vehicle/read-vehicle.ts';
import { findWaysRound } from '../../../geo/wayround/past-bar.ts';
import { openMap } from '../../../main/services/map/open-map.ts';
import { randomDrive, seeded, trackOf } from '../../support/random-drives.ts';
import { makeLargeMap } from '../make-large-map.ts';
import { tellRow } from '../table.ts';

/** Of a map of so many megabytes come about 200,000 roads. */
const MEGABYTES = 13;
const LENGTH_M = 50_000;

const card = readVehicle(readFileSync('sample-routes/vehicles/coach-built-7.4.json', 'utf8'), 'card');
const data = process.env['LANEGAUGE_DATA'];
const [wanted = 60] = process.argv.slice(2).map(Number);
if (data) await run(await makeLargeMap(join(data, 'maps'), MEGABYTES));
else console.log('LANEGAUGE_DATA is not set: no map to plant on');

async function run(path: string): Promise<void> {
  const opened = await openMap([path], undefined);
  if (!opened.ok || !card.ok) throw new Error('the map or the card cannot be read');
  const { drives, roads } = plant(opened.value);
  const [ways, checks]: [number[], number[]] = [[], []];
  let [bars, passed] = [0, 0];
  for (const { route, drive } of drives) {
    const check = {
      route,
      file: path,
      drive,
      roads,
      card: card.value,
      program: 'bench',
      made: '2027-01-01T00:00:00Z',
    };
    const report = timed(checks, () => checkDrive(check));
    const barred = report.findings.filter(({ level }) => level === 'barred');
    if (barred.length === 0) continue;
    const { waysRound } = timed(ways, () => findWaysRound({ check, report }));
    bars += barred.length;
    passed += barred.filter(({ id }) => waysRound.some(({ findingIds }) => findingIds.includes(id))).length;
  }
  const [first = 0, ...later] = ways;
  const told = (ms: readonly number[], share: number) => {
    const sorted = [...ms].sort((a, b) => a - b);
    return `${((sorted[Math.floor(share * (sorted.length - 1))] ?? 0) / 1000).toFixed(2)} s`;
  };
  const measured =
    `median ${told(later, 0.5)}, p95 ${told(later, 0.95)} of processor on ${later.length} drives with ${bars} bars, ${passed} passed; ` +
    `the first question on the map ${(first / 1000).toFixed(1)} s`;
  console.log(`${roads.ways.count} roads: ${measured}`);
  tellRow({
    work: 'way round, 50 km drive, 200,000 roads',
    must: 'median < 0.3 s, p95 < 1 s',
    aim: '< 0.1 s',
    measured,
    reference: `the check of the drive itself: median ${told(checks, 0.5)}, p95 ${told(checks, 0.95)}`,
  });
}

function timed<T>(into: number[], work: () => T): T {
  const begun = process.cpuUsage();
  const value = work();
  into.push(process.cpuUsage(begun).user / 1000);
  return value;
}

/** Drives along the map as it is, and the map with one low bridge on the middle part of each. */
function plant(roads: Roads): { drives: { route: Route; drive: Drive }[]; roads: Roads } {
  const random = seeded(23);
  const tags = [...roads.ways.tags];
  const drives: { route: Route; drive: Drive }[] = [];
  for (let tries = 0; drives.length < wanted && tries < 20 * wanted; tries++) {
    const known = randomDrive(roads, LENGTH_M, random);
    if (known === undefined) continue;
    const route = trackOf(known);
    const drive = followRoads(route, roads);
    const stretches = drive.legs.filter((leg): leg is Stretch => leg.kind === 'stretch');
    const barred = stretches[Math.floor(stretches.length * (0.2 + 0.6 * random()))];
    if (barred === undefined) continue;
    tags[barred.way] = { ...tags[barred.way], maxheight: '2.2' };
    drives.push({ route, drive });
  }
  return { drives, roads: { ...roads, ways: { ...roads.ways, tags } } };
}
