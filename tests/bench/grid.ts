/**
 * A library of drives for a whole fleet: 100 drives of 20 km, each followed once, each held against twelve vehicles.
 * Reference of the same run: following them.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkDrive } from '../../geo/check.ts';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import { readVehicle } from '../../geo/vehicle/read-vehicle.ts';
import { openMap } from '../../main/services/map/open-map.ts';
import { randomDrive, seeded, trackOf } from '../support/random-drives.ts';
import { tellRow } from './table.ts';

const DRIVES = 100;
const LENGTH_M = 20_000;
const MAP = 'gb-rutland';
const VEHICLES = ['panel-van-6.0', 'coach-built-7.0', 'coach-built-7.4', 'a-class-4.25t'];
/** three of each: as it is, a hand taller, without its rack */
const TALLER_M = 0.1;

const data = process.env['LANEGAUGE_DATA'];
if (data) await run(join(data, 'maps', `${MAP}.osm.pbf`));
else console.log('LANEGAUGE_DATA is not set: no drives to hold against vehicles');

async function run(path: string): Promise<void> {
  const opened = await openMap([path], undefined);
  if (!opened.ok) throw new Error(opened.error.message);
  const roads = opened.value;
  const fleet = VEHICLES.flatMap(threeOf);
  const random = seeded(11);
  const routes = [];
  while (routes.length < DRIVES) {
    const known = randomDrive(roads, LENGTH_M, random);
    if (known) routes.push(trackOf(known));
  }
  let findings = 0;
  let followMs = 0;
  const started = performance.now();
  for (const route of routes) {
    const before = performance.now();
    const drive = followRoads(route, roads);
    followMs += performance.now() - before;
    for (const card of fleet) {
      const input = { route, file: MAP, drive, roads, card, program: 'bench', made: '2027-01-01T00:00:00Z' };
      findings += checkDrive(input).findings.length;
    }
  }
  const allMs = performance.now() - started;
  console.log(
    `${DRIVES} drives x ${fleet.length} vehicles on ${MAP}: ${(allMs / 1000).toFixed(1)} s, of it following ${(followMs / 1000).toFixed(1)} s; ${findings} findings`,
  );
  tellRow({
    work: `grid of ${DRIVES} drives × ${fleet.length} vehicles (${MAP}, 20 km each), one thread`,
    must: 'followed once per drive',
    aim: '< 10 s',
    measured: `${(allMs / 1000).toFixed(1)} s`,
    reference: `following them ${(followMs / 1000).toFixed(1)} s: ${(allMs / followMs).toFixed(1)} ×`,
  });
}

function threeOf(name: string): VehicleCard[] {
  const read = readVehicle(readFileSync(`sample-routes/vehicles/${name}.json`, 'utf8'), name);
  if (!read.ok) throw new Error(read.error.message);
  const { rack: _, ...bare } = read.value;
  return [read.value, { ...read.value, heightM: read.value.heightM + TALLER_M }, bare];
}
