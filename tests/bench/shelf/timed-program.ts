import { spawnSync } from 'node:child_process';
import { largest } from '../../../geo/lists.ts';

/** What a run took. */
export interface Took {
  /** by the clock, from its start to its end */
  readonly ms: number;
  /** of processors, in all threads of it and of programs it started: what a busy machine distorts less */
  readonly cpuMs: number;
}

/** What a program that ran through took and printed. */
interface Ran extends Took {
  /** of the one process that held most at a time */
  readonly peakMb: number;
  readonly out: string;
}

/** Has every process say at its end what it took. */
const TELLING = `data:text/javascript,${encodeURIComponent(`
import { isMainThread } from 'node:worker_threads';
if (isMainThread) process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  process.stderr.write('took ' + (userCPUTime + systemCPUTime) + ' ' + maxRSS + '\\n');
});`)}`;

/** Runs Node with these words and nothing warm in it. @param home the program's data folder */
export function runProgram(words: readonly string[], home = ''): Ran {
  const started = performance.now();
  const ended = spawnSync(process.execPath, [...words], {
    encoding: 'utf8',
    maxBuffer: 2 ** 28,
    env: { ...process.env, LANEGAUGE_HOME: home, NODE_OPTIONS: `--import ${TELLING}` },
  });
  const ms = performance.now() - started;
  // 1 says that something is barred
  if (ended.status !== 0 && ended.status !== 1) throw new Error(ended.stderr);
  const told = [...ended.stderr.matchAll(/^took (\d+) (\d+)$/gmu)].map(([, micros, kb]) => ({
    cpuMs: Number(micros) / 1000,
    peakMb: Number(kb) / 1000,
  }));
  const cpuMs = told.reduce((sum, each) => sum + each.cpuMs, 0);
  return { ms, cpuMs, peakMb: largest(told.map(({ peakMb }) => peakMb)), out: ended.stdout };
}

/** The best of several runs, by clock and by processor. */
export function bestOf(runs: number, run: () => Took): Took {
  const all = Array.from({ length: runs }, run);
  return {
    ms: Math.min(...all.map((each) => each.ms)),
    cpuMs: Math.min(...all.map((each) => each.cpuMs)),
  };
}

/** For a table's cell. */
export function sayTook({ ms, cpuMs }: Took): string {
  return `${(ms / 1000).toFixed(2)} s (${(cpuMs / 1000).toFixed(2)} s of processors)`;
}
