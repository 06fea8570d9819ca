/**
 * A drive of 325 km through five places laid out anew on a shelf of 408 MB (the extracts in LANEGAUGE_DATA/maps on a
 * grid; the places lie on one copy of the main roads of Lower Saxony), in a program just started. Argument: another size
 * in megabytes.
 */
import { execFileSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { keepGrid } from '../shelf/keep-grid.ts';
import { bestOf, runProgram, sayTook } from '../shelf/timed-program.ts';
import { tellRow } from '../table.ts';

const PLACES = [
  '45.313473,-177.273201',
  '45.43525,-176.398101',
  '45.46369,-177.085679',
  '45.563529,-177.826723',
  '45.382169,-176.731304',
];
const VEHICLE = 'sample-routes/vehicles/coach-built-7.0.json';
const RUNS = 5;

const data = process.env['LANEGAUGE_DATA'];
const [megabytes = 400] = process.argv.slice(2).map(Number);
if (data) await run(join(data, 'maps'));
else console.log('LANEGAUGE_DATA is not set: no map to plan on');

async function run(folder: string): Promise<void> {
  execFileSync(process.execPath, ['main/run.mjs']);
  const { home, roads } = await keepGrid(folder, megabytes);
  const gpx = join(home, 'planned.gpx');
  const at = PLACES.flatMap((place) => ['--at', place]);
  const words = ['.build/program/cli/main.js', 'plan', '--vehicle', VEHICLE, ...at, '--gpx', gpx, '--json'];
  let lengthM = 0;
  const took = bestOf(RUNS, () => {
    rmSync(gpx, { force: true });
    const ended = runProgram(words, home);
    lengthM = Number(/"lengthM": ?([\d.]+)/u.exec(ended.out)?.[1] ?? 0);
    return ended;
  });
  tellRow({
    work: `plan ${Math.round(lengthM / 1000)} km anew through ${PLACES.length} places, shelf of ${roads} roads, program just started`,
    must: '< 2 s',
    aim: '< 0.5 s',
    measured: sayTook(took),
    reference: `Node doing nothing ${sayTook(bestOf(RUNS, () => runProgram(['-e', ''])))}`,
  });
}
