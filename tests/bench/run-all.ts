/**
 * Every bench in turn, each in a process of its own so that none warms the next one's code or swells its memory.
 * `npm run bench` runs all; `npm run bench -- match` those whose name holds the word.
 */
import { spawnSync } from 'node:child_process';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';

const BENCHES = [
  'read-maps',
  'read-gpx',
  'match-seattle',
  'match-extracts',
  'planted-limits',
  'false-alarms',
  'check-long-drive',
];

const only = process.argv[2] ?? '';
console.log(`${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.version}`);
for (const name of BENCHES.filter((bench) => bench.includes(only))) {
  console.log(`\n== ${name}`);
  const ended = spawnSync(process.execPath, [fileURLToPath(new URL(`./${name}.js`, import.meta.url))], {
    stdio: 'inherit',
  });
  if (ended.status !== 0) process.exitCode = 1;
}
