import { Worker } from 'node:worker_threads';
import type { Fault, FromWorker, WorkerData } from './worker.ts';

/** Processor time one input may take, both of its readings together; the wall's clock would count the neighbours. */
export const BOUND_MS = 2000;
const LOOK_EVERY_MS = 100;

export interface Watched {
  /** how many inputs were tried, by target */
  readonly counts: Map<string, number>;
  readonly faults: Fault[];
}

/** Tries inputs in a thread of its own until the time is over; one that hangs is told, and the next ones are tried. */
export async function watch(
  seed: number,
  endMs: number,
  nameOf: (number: number) => string,
): Promise<Watched> {
  const watched: Watched = { counts: new Map(), faults: [] };
  let next = 0;
  while (performance.now() < endMs) {
    const hung = await runThread({ seed, from: next }, endMs, watched, (reached) => {
      next = reached;
    });
    if (hung === undefined) break;
    const what = `takes over ${BOUND_MS / 1000} s`;
    watched.faults.push({ target: nameOf(hung), seed, number: hung, what, input: '' });
    next = hung + 1;
  }
  return watched;
}

/** @returns the number of the try that hung, undefined when the time was over */
function runThread(
  start: Pick<WorkerData, 'seed' | 'from'>,
  endMs: number,
  watched: Watched,
  onNext: (next: number) => void,
): Promise<number | undefined> {
  const underWay = new Int32Array(new SharedArrayBuffer(4)).fill(-1);
  const worker = spawn({ ...start, underWay });
  worker.on('message', (message: FromWorker) => take(message, watched, onNext));
  return new Promise((resolve, reject) => {
    let seen = -1;
    let sinceCpuMs = cpuMs();
    const timer = setInterval(() => {
      const now = Atomics.load(underWay, 0);
      if (now !== seen || now === -1) [seen, sinceCpuMs] = [now, cpuMs()];
      const hangs = cpuMs() - sinceCpuMs > BOUND_MS;
      if (hangs || performance.now() > endMs) end(() => resolve(hangs ? now : undefined));
    }, LOOK_EVERY_MS);
    const end = (settle: () => void) => {
      clearInterval(timer);
      void worker.terminate().then(settle);
    };
    worker.on('error', (error) => end(() => reject(error)));
  });
}

function take(message: FromWorker, { counts, faults }: Watched, onNext: (next: number) => void): void {
  if (message.kind === 'fault') faults.push(message.fault);
  else {
    onNext(message.next);
    for (const [name, count] of Object.entries(message.counts))
      counts.set(name, (counts.get(name) ?? 0) + count);
  }
}

/** Tries one input again. @returns what is wrong with how it is taken */
export function tryAgain(target: string, input: Uint8Array): Promise<string | undefined> {
  const worker = spawn({ seed: 0, from: 0, underWay: new Int32Array(1), again: { target, input } });
  const start = cpuMs();
  return new Promise((resolve, reject) => {
    let what: string | undefined;
    const timer = setInterval(() => {
      if (cpuMs() - start > 3 * BOUND_MS) end(`takes over ${BOUND_MS / 1000} s`);
    }, LOOK_EVERY_MS);
    const end = (said: string | undefined) => {
      clearInterval(timer);
      void worker.terminate().then(() => resolve(said));
    };
    worker.on('error', reject);
    worker.on('message', (message: FromWorker) => {
      if (message.kind === 'fault') what = message.fault.what;
      else end(what);
    });
  });
}

function spawn(workerData: WorkerData): Worker {
  return new Worker(new URL('./worker.js', import.meta.url), { workerData });
}

function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
