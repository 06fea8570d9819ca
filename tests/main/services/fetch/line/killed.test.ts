import { spawn } from 'node:child_process';
import { cpSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { fetchLine } from '../../../../../main/services/fetch/line/fetch-line.ts';
import { planLineFetch } from '../../../../../main/services/fetch/line/plan-line-fetch.ts';
import { LONG } from '../../../../support/map-server/straight-map.ts';
import { worked } from '../../../../support/scratch-files.ts';
import { dataFolder, type Trial, trial } from './support.ts';

const ROOT = new URL('../../../../../.build/main/services/fetch/line/', import.meta.url);
/** How long after its first word the program is killed. A start of it is costly: tests/bench/shelf/killed.ts kills at fifty moments. */
const KILLED_AFTER_MS = 60;

/** A program that fetches again and again, throwing away what it has every second time. */
const FETCHER = `
const [, server, dataFolder, lons, now, root] = process.argv;
const { planLineFetch } = await import(root + 'plan-line-fetch.js');
const { fetchLine } = await import(root + 'fetch-line.js');
const lon = Float64Array.from(JSON.parse(lons));
const route = { segments: [{ lat: lon.map(() => 50), lon }] };
const sleep = () => new Promise((resolve) => setTimeout(resolve, 1));
const pace = { now: () => new Date(now), sleep };
for (let round = 0; ; round++) {
  const plan = await planLineFetch(route, { server, dataFolder, pace });
  const fetched = await fetchLine(plan.value, { onProgress: () => process.stdout.write('.') });
  if (!fetched.ok) throw new Error(fetched.error.message);
  if (round % 2 === 1) await fetched.value.forget();
}`;

async function killAfter(ms: number, { server, folder, route, pace }: Trial): Promise<void> {
  const lons = JSON.stringify([...(route.segments[0]?.lon ?? [])]);
  const words = [server.address.href, folder, lons, pace.now().toISOString(), ROOT.href];
  const child = spawn(process.execPath, ['--input-type=module', '-e', FETCHER, ...words]);
  let complaint = '';
  child.stderr.on('data', (data) => {
    complaint += String(data);
  });
  const ended = new Promise((resolve) => child.once('exit', resolve));
  await Promise.race([new Promise((resolve) => child.stdout.once('data', resolve)), ended]);
  await new Promise((resolve) => setTimeout(resolve, ms));
  child.kill('SIGKILL');
  await ended;
  expect(complaint).toBe('');
}

it('a fetch that is killed goes on from what it has, and ends with the same map', async () => {
  const tried = await trial({ count: LONG });
  const undisturbed = worked(await tried.fetch());
  const map = readFileSync(undisturbed.path, 'utf8');
  await undisturbed.forget();
  await killAfter(KILLED_AFTER_MS, tried);
  const fetched = worked(await tried.fetch());
  expect(readFileSync(fetched.path, 'utf8')).toBe(map);
  await fetched.forget();
  // what was half written is under a name that nobody reads, and goes at a later start
  const left = readdirSync(join(tried.folder, 'fetch', 'line'));
  expect(left.filter((name) => /\.json(?:\.gz)?$/u.test(name))).toEqual([]);
});

it('what any step of a fetch leaves in its folder is gone on from, to the same map', async () => {
  const { route, pace, server, fetch, folder } = await trial({ count: LONG });
  const left: string[] = [];
  const keep = () => {
    const copy = dataFolder();
    cpSync(folder, copy, { recursive: true });
    left.push(copy);
  };
  const map = readFileSync(worked(await fetch({ onProgress: keep })).path, 'utf8');
  expect(left.length).toBeGreaterThan(5);
  const asked: number[] = [];
  for (const copy of left.filter((_, i) => i % 3 === 0)) {
    const before = server.asked.length;
    const settings = { server: server.address.href, dataFolder: copy, pace };
    const fetched = worked(await fetchLine(worked(await planLineFetch(route, settings))));
    expect(readFileSync(fetched.path, 'utf8')).toBe(map);
    asked.push(server.asked.length - before);
  }
  // the later the step, the less is left to ask
  expect(asked).toEqual(asked.toSorted((a, b) => b - a));
  expect(asked.at(-1)).toBeLessThan(asked[0]!);
});
