/**
 * Turns of a 300 km drive: found on the map, then measured for one vehicle and told. Beside them, as the reference of
 * the same run, the time to follow the same route along the roads; and how many turns and findings a drive gets.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import { timesOf } from '../../geo/drive/times/times-of.ts';
import { findTurns } from '../../geo/drive/turns/find-turns.ts';
import { alongDrive } from '../../geo/rules/along.ts';
import { swing } from '../../geo/rules/corners/swing.ts';
import { turn } from '../../geo/rules/corners/turn.ts';
import { DEFAULT_MARGINS, type RuleInput } from '../../geo/rules/rule.ts';
import { envelopeOf } from '../../geo/vehicle/envelope.ts';
import { readVehicle } from '../../geo/vehicle/read-vehicle.ts';
import { openMap } from '../../main/services/map/open-map.ts';
import { randomDrive, seeded, trackOf } from '../support/random-drives.ts';
import { tellRow } from './table.ts';

const LENGTH_M = 300_000;
const VEHICLE = 'coach-built-7.4';

const data = process.env['LANEGAUGE_DATA'];
if (data)
  for (const name of ['de-nds-mainroads', 'gb-rutland', 'li-liechtenstein'])
    await run(join(data, 'maps', `${name}.osm.pbf`), name);
else console.log('LANEGAUGE_DATA is not set: no turns to find');

async function run(path: string, name: string): Promise<void> {
  const opened = await openMap([path], undefined);
  if (!opened.ok) throw new Error(opened.error.message);
  const card = readVehicle(readFileSync(`sample-routes/vehicles/${VEHICLE}.json`, 'utf8'), VEHICLE);
  if (!card.ok) throw new Error(card.error.message);
  const roads = opened.value;
  const random = seeded(3);
  let known = randomDrive(roads, LENGTH_M, random);
  while (known === undefined) known = randomDrive(roads, LENGTH_M, random);
  const route = trackOf(known);
  followRoads(route, roads);
  const [drive, followMs] = timed(() => followRoads(route, roads));
  const times = timesOf(drive, roads, card.value, undefined);
  const input: RuleInput = {
    drive,
    roads,
    card: card.value,
    envelope: envelopeOf(card.value),
    margins: DEFAULT_MARGINS,
    units: 'metric',
    country: [],
    along: alongDrive(drive, roads, { countries: times.countries, times }),
  };
  const [turns, findMs] = timed(() => findTurns(drive, roads));
  const [findings, tellMs] = timed(() => [...turn(input), ...swing(input)]);
  const allMs = findMs + tellMs;
  const km = (drive.lengthM / 1000).toFixed(0);
  console.log(
    `${name}: ${km} km, ${turns.length} turns found in ${findMs.toFixed(0)} ms; measured and told in ${tellMs.toFixed(0)} ms: ` +
      `${findings.length} findings, ${findings.filter(({ folded }) => !folded).length} shown; ` +
      `following the drive ${followMs.toFixed(0)} ms, ${(allMs / followMs).toFixed(2)} × of it`,
  );
  tellRow({
    work: `turns of a ${km} km drive (${name}): ${turns.length}`,
    must: '< 0.5 s',
    aim: '',
    measured: `${(allMs / 1000).toFixed(3)} s`,
    reference: `following the drive ${followMs.toFixed(0)} ms: ${(allMs / followMs).toFixed(2)} ×`,
  });
}

function timed<T>(work: () => T): [T, number] {
  const started = performance.now();
  const value = work();
  return [value, performance.now() - started];
}
