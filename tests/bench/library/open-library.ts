/**
 * Opens a library of 2,000 drives, and one of 5,000, each in a program just started: the first time on a computer, and
 * again. The half second is the library's own; what Node and the code take is told apart.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openLibrary } from '../../../main/services/library/open-library.ts';
import { tellRow } from '../table.ts';

const OPENER = `
const { openLibrary } = await import(${JSON.stringify(new URL('../../../main/services/library/open-library.js', import.meta.url).href)});
const [, folder, dataFolder] = process.argv;
const used = () => { const { user, system } = process.cpuUsage(); return (user + system) / 1000; };
const [before, cpu] = [performance.now(), used()];
const library = await openLibrary({ folder, dataFolder, now: () => new Date(), waitMs: 60_000 });
const [ms, opened] = [performance.now() - before, used() - cpu];
const drives = library.list('drive').length;
process.stdout.write(JSON.stringify({ ms, cpu: opened, listMs: performance.now() - before - ms, drives, notices: library.notices() }));`;

const TIMES = 3;

for (const drives of [2000, 5000]) {
  const home = mkdtempSync(join(tmpdir(), 'open-library-'));
  const folder = join(home, 'yard');
  const library = await openLibrary({ folder, dataFolder: join(home, 'maker'), now: () => new Date() });
  for (let i = 0; i < drives; i++) {
    const gpx = i.toString(16).padStart(64, '0');
    const body = {
      gpx,
      file: `drive-${i}.gpx`,
      track: 1,
      trackName: `Along the coast ${i}`,
      lengthM: 100_000 + i,
      from: [54, 9] as [number, number],
      to: [54.5, 9.5] as [number, number],
      leaveAt: '2027-06-12T09:30',
    };
    const put = await library.put({ kind: 'drive', id: `drive-${gpx.slice(-16)}-1`, body });
    if (!put.ok) throw new Error(put.error.message);
  }
  const first = Array.from({ length: TIMES }, (_, i) => open(folder, join(home, `first-${i}`), drives));
  const again = Array.from({ length: TIMES }, () => open(folder, join(home, 'first-0'), drives));
  rmSync(home, { recursive: true });
  const [one, other] = [best(first), best(again)];
  console.log(
    `${drives} drives: first ${one.ms.toFixed(0)} ms (${one.cpu.toFixed(0)} of processors), again ${other.ms.toFixed(0)} ms (${other.cpu.toFixed(0)})`,
  );
  tellRow({
    work: `open a library of ${drives} drives`,
    must: drives === 2000 ? '< 0.5 s' : '',
    aim: '',
    measured: `${(other.ms / 1000).toFixed(2)} s`,
    reference: `${(other.cpu / 1000).toFixed(2)} s of processors; looking at every drive ${(other.listMs / 1000).toFixed(2)} s more; the first time on a computer ${(one.ms / 1000).toFixed(2)} s`,
  });
}

interface Opened {
  readonly ms: number;
  /** of processors, milliseconds */
  readonly cpu: number;
  /** until every drive has been looked at */
  readonly listMs: number;
  readonly drives: number;
  readonly notices: readonly string[];
}

function open(folder: string, dataFolder: string, drives: number): Opened {
  const words = ['--input-type=module', '-e', OPENER, folder, dataFolder];
  const { stdout, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8' });
  if (stdout === '') throw new Error(stderr);
  const opened: Opened = JSON.parse(stdout);
  if (opened.drives !== drives || opened.notices.length > 0) throw new Error(stdout);
  return opened;
}

function best(opened: readonly Opened[]): Opened {
  return opened.reduce((a, b) => (b.ms < a.ms ? b : a));
}
