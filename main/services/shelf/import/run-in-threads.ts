import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { builtFile } from '../../built-file.ts';
import { Cancelled } from '../../map/map-reading.ts';
import type { FromWorker, ToWorker } from './messages.ts';
import type { Runner, StageOutcome } from './runner.ts';
import type { StageName } from './stages/index.ts';
import { NotSorted, Stopped } from './stopped.ts';
import { MOST_WORKERS } from './workers.ts';

/** What waits for a worker at a time: it need not wait for the answer to be read. */
const AHEAD = 2;

/** Young objects live in little room: what an import keeps lies in typed arrays. */
const LIMITS = { maxYoungGenerationSizeMb: 4 };

/** Works in threads of its own. They are ended with the signal. */
export function runInThreads(
  signal?: AbortSignal,
  workers = Math.min(MOST_WORKERS, availableParallelism()),
): Runner {
  const threads: (Worker | undefined)[] = [];
  const thread = (i: number): Worker => threads[i] ?? started(i);
  const started = (i: number): Worker => {
    const one = new Worker(builtFile('services/shelf/import/worker.js'), { resourceLimits: LIMITS });
    threads[i] = one;
    // whoever has it work hears of what fails; one that ends while nobody does is made anew, and told of then
    one
      .on('error', () => {})
      .once('exit', () => {
        if (threads[i] === one) threads[i] = undefined;
      });
    return one;
  };
  return {
    workers,
    run(stage, setup, tasks, onDone) {
      const count = Math.max(1, Math.min(workers, tasks.length));
      const used = Array.from({ length: count }, (_, i) => thread(i));
      return runStage(used, { stage, setup, tasks, onDone }, signal) as Promise<StageOutcome<typeof stage>>;
    },
    prepare() {
      if (signal?.aborted) return;
      for (let i = 0; i < workers; i++) thread(i);
    },
    async close() {
      await Promise.all(threads.splice(0).map((one) => one?.terminate()));
    },
  };
}

interface StageWork {
  readonly stage: StageName;
  readonly setup: unknown;
  readonly tasks: readonly unknown[];
  onDone(done: number): void;
}

/** Rejects with Cancelled, Stopped, NotSorted or what was thrown in a thread. */
function runStage(
  threads: readonly Worker[],
  { stage, setup, tasks, onDone }: StageWork,
  signal: AbortSignal | undefined,
): Promise<{ done: unknown[]; ends: unknown[] }> {
  const done: unknown[] = new Array(tasks.length);
  const ends: unknown[] = [];
  let next = 0;
  let finished = 0;
  const { promise, resolve, reject } = withResolvers<{ done: unknown[]; ends: unknown[] }>();
  const abort = () => reject(new Cancelled());
  const listeners = threads.map((thread, worker) => {
    const tell = (message: ToWorker) => thread.postMessage(message);
    const feed = () => {
      if (next < tasks.length) tell({ kind: 'task', index: next, task: tasks[next++] });
      else tell({ kind: 'end' });
    };
    let ended = false;
    const hear = (message: FromWorker) => {
      if (message.kind === 'done') {
        done[message.index] = message.done;
        onDone(++finished);
        if (!ended) {
          if (next >= tasks.length) ended = true;
          feed();
        }
      } else if (message.kind === 'ended') {
        ends[worker] = message.end;
        if (ends.filter((end) => end !== undefined).length === threads.length) resolve({ done, ends });
      } else if (message.kind === 'stopped') reject(new Stopped(message.problem));
      else reject(new NotSorted());
    };
    const fail = (error: Error) => reject(error);
    const exit = () => reject(new Error('a thread of the import ended early'));
    thread.on('message', hear).on('error', fail).on('exit', exit);
    tell({ kind: 'begin', stage, setup, worker });
    for (let i = 0; i < AHEAD && !ended; i++) {
      if (next >= tasks.length) ended = true;
      feed();
    }
    return () => thread.off('message', hear).off('error', fail).off('exit', exit);
  });
  if (signal?.aborted) abort();
  signal?.addEventListener('abort', abort, { once: true });
  return promise.finally(() => {
    signal?.removeEventListener('abort', abort);
    for (const stop of listeners) stop();
  });
}

function withResolvers<T>() {
  let resolve!: (value: T) => void;
  let reject!: (reason: unknown) => void;
  const promise = new Promise<T>((yes, no) => {
    resolve = yes;
    reject = no;
  });
  return { promise, resolve, reject };
}
