/**
 * Every bench in turn, each in a process of its own so that none warms the next one's code or swells its memory, and
 * at the end the table of what was promised, what was measured and what it was held against.
 * `npm run bench` runs all; `npm run bench -- match turns` those whose name holds one of the words.
 */
import { spawn } from 'node:child_process';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { type TableRow, tableOf, takeRows } from './table.ts';

const BENCHES = [
  'read-maps',
  'read-gpx',
  'match-seattle',
  'match-extracts',
  'planted-limits',
  'local-notes',
  'independent-rules',
  'false-alarms',
  'check-long-drive',
  'shelf/import-shelf',
  'shelf/shelf-equals-file',
  'shelf/cold-check',
  'shelf/killed',
  'shelf/pan',
  'library/open-library',
  'library/two-editors',
  'turns',
  'way-round/planted',
  'way-round/fifty-km',
  'way-round/plan-on-shelf',
  'way-round/small-networks',
  'way-round/large-networks',
  'way-round/changed-maps',
  'day/planted-services',
  'grid',
  'yard/yard-grid',
  'yard/large-yard',
  'hand-over',
  'window-start',
  'map-pan',
  'swing-view',
  'soak/soak',
];

const words = process.argv.slice(2);
const rows: TableRow[] = [];
console.log(`${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.version}`);
const wanted = (bench: string): boolean => words.length === 0 || words.some((word) => bench.includes(word));
for (const name of BENCHES.filter(wanted)) {
  console.log(`\n== ${name}`);
  if (!(await run(name))) process.exitCode = 1;
}
if (rows.length > 0) console.log(`\n${tableOf(rows)}`);

/** @returns whether it ended well */
function run(name: string): Promise<boolean> {
  const bench = spawn(process.execPath, [fileURLToPath(new URL(`./${name}.js`, import.meta.url))], {
    stdio: ['inherit', 'pipe', 'inherit'],
  });
  let rest = '';
  const take = (output: string): void => {
    const { text, rows: found } = takeRows(output);
    rows.push(...found);
    if (text !== '') process.stdout.write(text);
  };
  bench.stdout.setEncoding('utf8').on('data', (data: string) => {
    const whole = (rest + data).lastIndexOf('\n') + 1;
    const output = rest + data;
    take(output.slice(0, whole));
    rest = output.slice(whole);
  });
  return new Promise((done) => {
    bench.once('close', (code) => {
      take(rest);
      done(code === 0);
    });
  });
}
