/**
 * The timetable held against a recorded drive: the 80 km through and about Seattle (Newson & Krumm 2009), a car's, with
 * a fix every second. Prints minutes driven and minutes told, in all and by class of road, and how long the car stood.
 * The network has speed limits and no signals, so no junction's wait is in what is told.
 */
import { join } from 'node:path';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import { pointAt } from '../../geo/drive/point-at.ts';
import { timesOf } from '../../geo/drive/times/times-of.ts';
import { secondsAt } from '../../geo/drive/times/timetable.ts';
import { distanceM } from '../../geo/earth/sphere.ts';
import { openMap } from '../../main/services/map/open-map.ts';
import { readRouteFile } from '../../main/services/route/read-route-file.ts';

/** Below this a car stands. */
const STANDING_MPS = 0.5;
const CAR = { grossKg: 2000 };

const data = process.env['LANEGAUGE_DATA'];
if (data) await run(join(data, 'seattle'));
else console.log('LANEGAUGE_DATA is not set: nothing to time');

async function run(folder: string): Promise<void> {
  const opened = await openMap([join(folder, 'network.osm.xml.gz')], undefined);
  if (!opened.ok) throw new Error(opened.error.message);
  const roads = opened.value;
  const read = await readRouteFile(join(folder, 'track_1s.gpx'));
  const route = read.ok ? read.value.routes[0] : undefined;
  const segment = route?.segments[0];
  if (route === undefined || segment === undefined) throw new Error('the recorded drive cannot be read');
  const drive = followRoads(route, roads);
  const times = timesOf(drive, roads, CAR, 'US');

  // the recording's clock at every tenth of a kilometre: the fix nearest to the place, going on from the last
  let fix = 0;
  const clockS: number[] = [];
  const STEP_M = 100;
  for (let atM = 0; atM <= drive.lengthM; atM += STEP_M) {
    const place = pointAt(drive, roads, atM)!;
    let best = fix;
    let bestM = Infinity;
    for (let i = fix; i < Math.min(segment.lat.length, fix + 400); i++) {
      const away = distanceM(place.lat, place.lon, segment.lat[i]!, segment.lon[i]!);
      if (away < bestM) [best, bestM] = [i, away];
    }
    fix = best;
    clockS.push((segment.timeMs[fix]! - segment.timeMs[0]!) / 1000);
  }
  const byClass = new Map<string, { km: number; drivenS: number; toldS: number; limitS: number }>();
  for (let k = 1; k < clockS.length; k++) {
    const middle = pointAt(drive, roads, (k - 0.5) * STEP_M)!;
    const leg = drive.legs[middle.legIndex]!;
    const name = leg.kind === 'stretch' ? (roads.ways.tags[leg.way]?.['highway'] ?? '') : leg.kind;
    const sum = byClass.get(name) ?? { km: 0, drivenS: 0, toldS: 0, limitS: 0 };
    sum.km += STEP_M / 1000;
    sum.drivenS += clockS[k]! - clockS[k - 1]!;
    sum.toldS += secondsAt(times, k * STEP_M) - secondsAt(times, (k - 1) * STEP_M);
    const limit = leg.kind === 'stretch' ? Number(roads.ways.tags[leg.way]?.['maxspeed']) : Number.NaN;
    sum.limitS += limit > 0 ? (STEP_M / limit) * 3.6 : 0;
    byClass.set(name, sum);
  }
  let stoodS = 0;
  let stops = 0;
  let standing = false;
  for (let i = 1; i < segment.lat.length; i++) {
    const s = (segment.timeMs[i]! - segment.timeMs[i - 1]!) / 1000;
    const v = distanceM(segment.lat[i - 1]!, segment.lon[i - 1]!, segment.lat[i]!, segment.lon[i]!) / s;
    if (v < STANDING_MPS) {
      stoodS += s;
      if (!standing) stops++;
    }
    standing = v < STANDING_MPS;
  }
  const minutes = (s: number) => (s / 60).toFixed(1);
  const all = (segment.timeMs.at(-1)! - segment.timeMs[0]!) / 1000;
  console.log(
    `${(drive.lengthM / 1000).toFixed(1)} km: driven ${minutes(all)} min, of which it stood ${minutes(stoodS)} min in ${stops} stops; told ${minutes(times.totalS)} min`,
  );
  for (const [name, { km, drivenS, toldS, limitS }] of byClass)
    console.log(
      `  ${name.padEnd(12)} ${km.toFixed(1).padStart(5)} km: driven ${minutes(drivenS)} min (${((km / drivenS) * 3600).toFixed(0)} km/h), told ${minutes(toldS)} min (${((km / toldS) * 3600).toFixed(0)} km/h), at the posted limit ${minutes(limitS)} min`,
    );
}
