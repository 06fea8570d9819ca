import { spawnSync } from 'node:child_process';

/** What a run took. */
export interface Took {
  /** by the clock, from its start to its end */
  readonly ms: number;
  /** of processors, in all its threads: what a busy machine distorts less */
  readonly cpuMs: number;
}

/** Has every program say at its end what it took of the processors. */
const TELLING =
  'data:text/javascript,process.on("exit",()=>{const{user,system}=process.cpuUsage();process.stderr.write("cpu "+(user+system)+"\\n")})';

/** Runs Node with these words and nothing warm in it. @param home the program's data folder */
export function runProgram(words: readonly string[], home = ''): Took & { readonly out: string } {
  const started = performance.now();
  const ended = spawnSync(process.execPath, ['--import', TELLING, ...words], {
    encoding: 'utf8',
    maxBuffer: 2 ** 28,
    env: { ...process.env, LANEGAUGE_HOME: home },
  });
  const ms = performance.now() - started;
  // 1 says that something is barred
  if (ended.status !== 0 && ended.status !== 1) throw new Error(ended.stderr);
  const told = [...ended.stderr.matchAll(/^cpu (\d+)$/gmu)].map(([, micros]) => Number(micros));
  return { ms, cpuMs: Math.max(...told) / 1000, out: ended.stdout };
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
