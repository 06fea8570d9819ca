/**
 * A 300 km drive on an opened map: following it, checking it, checking it again with another vehicle. Beside it, as
 * the reference of the same run, the time to parse the report's own JSON, so that a slow machine shows as such.
 */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkDrive } from '../../geo/check.ts';
import { countPositions } from '../../geo/drive/gpx/route-length.ts';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import { roadGraph } from '../../geo/graph/road-graph.ts';
import { readVehicle } from '../../geo/vehicle/read-vehicle.ts';
import { openMap } from '../../main/services/map/open-map.ts';
import { randomDrive, seeded, trackOf } from '../support/random-drives.ts';
import { tellRow } from './table.ts';

const LENGTH_M = 300_000;
const VEHICLES = ['panel-van-6.0', 'coach-built-7.0', 'coach-built-7.4', 'a-class-4.25t'];

const data = process.env['LANEGAUGE_DATA'];
if (data)
  for (const name of ['de-nds-mainroads', 'gb-rutland', 'li-liechtenstein'])
    await run(join(data, 'maps', `${name}.osm.pbf`), name);
else console.log('LANEGAUGE_DATA is not set: nothing to check');

async function run(path: string, name: string): Promise<void> {
  const [opened, openMs] = await timed(() => openMap([path], undefined));
  if (!opened.ok) throw new Error(opened.error.message);
  const roads = opened.value;
  const [, graphMs] = await timed(() => roadGraph(roads));
  const random = seeded(3);
  let known = randomDrive(roads, LENGTH_M, random);
  while (known === undefined) known = randomDrive(roads, LENGTH_M, random);
  const route = trackOf(known);
  const [drive, firstMs] = await timed(() => followRoads(route, roads));
  const [, againMs] = await timed(() => followRoads(route, roads));
  const checks: string[] = [];
  let reportMs = 0;
  const tookMs: number[] = [];
  for (const vehicle of VEHICLES) {
    const card = readVehicle(readFileSync(`sample-routes/vehicles/${vehicle}.json`, 'utf8'), vehicle);
    if (!card.ok) throw new Error(card.error.message);
    const input = {
      route,
      file: name,
      drive,
      roads,
      card: card.value,
      program: 'bench',
      made: '2027-01-01T00:00:00Z',
    };
    const [report, ms] = await timed(() => checkDrive(input));
    checks.push(`${ms.toFixed(0)} ms (${report.findings.length} findings)`);
    tookMs.push(ms);
    [, reportMs] = await timed(() => JSON.parse(JSON.stringify(report)));
  }
  console.log(
    `${name}: opened in ${openMs.toFixed(0)} ms, graph ${graphMs.toFixed(0)} ms; ${(drive.lengthM / 1000).toFixed(0)} km, ` +
      `${countPositions(route)} positions: followed in ${firstMs.toFixed(0)} ms, again ${againMs.toFixed(0)} ms; ` +
      `checked with four vehicles in ${checks.join(', ')}; the last report through JSON and back ${reportMs.toFixed(0)} ms`,
  );
  const [coldMs = Number.NaN, ...warm] = tookMs;
  const lastMs = warm.at(-1) ?? Number.NaN;
  tellRow({
    work: `check a ${(drive.lengthM / 1000).toFixed(0)} km drive on an opened map (${name})`,
    must: '< 1 s',
    aim: '< 0.2 s',
    measured: `${(coldMs / 1000).toFixed(2)} s the first vehicle, ${(lastMs / 1000).toFixed(2)} s the fourth; following it ${(againMs / 1000).toFixed(2)} s`,
    reference: `the fourth's report through JSON and back ${reportMs.toFixed(0)} ms: ${(lastMs / reportMs).toFixed(0)} ×`,
  });
}

async function timed<T>(work: () => T | Promise<T>): Promise<[T, number]> {
  const started = performance.now();
  const value = await work();
  return [value, performance.now() - started];
}
