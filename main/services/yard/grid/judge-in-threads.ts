import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { builtFile } from '../../built-file.ts';
import type { DriveTask, FromJudge, JudgeSetup, ToJudge } from './messages.ts';

/** Each holds the roads about a drive; more than these would only wait for the disk. */
const MOST_THREADS = 8;
/** What waits for a thread at a time: it need not wait for the answer to be read. */
const AHEAD = 2;

/**
 * Judges all drives on all cores, in the order given.
 * @param hear what is heard of a cell or a drive, as it comes
 * @returns when all are done, or with the signal; rejects where a thread ends early
 */
export async function judgeInThreads(
  tasks: readonly DriveTask[],
  setup: JudgeSetup,
  { hear, signal }: { hear(news: FromJudge): void; readonly signal: AbortSignal },
): Promise<void> {
  const count = Math.min(MOST_THREADS, availableParallelism(), tasks.length);
  const threads = Array.from({ length: count }, () => new Worker(builtFile('services/yard/grid/worker.js')));
  const queue = [...tasks];
  try {
    await Promise.all(threads.map((thread) => drain(thread, queue, setup, { hear, signal })));
  } finally {
    await Promise.all(threads.map((thread) => thread.terminate()));
  }
}

function drain(
  thread: Worker,
  queue: DriveTask[],
  setup: JudgeSetup,
  { hear, signal }: { hear(news: FromJudge): void; readonly signal: AbortSignal },
): Promise<void> {
  return new Promise((resolve, reject) => {
    let waiting = 0;
    const tell = (message: ToJudge) => thread.postMessage(message);
    const feed = () => {
      const task = signal.aborted ? undefined : queue.shift();
      if (task !== undefined) {
        waiting++;
        tell({ kind: 'drive', task });
      } else if (waiting === 0) resolve();
    };
    thread.on('message', (news: FromJudge) => {
      if (signal.aborted) return;
      hear(news);
      if (news.kind === 'cell') return;
      waiting--;
      feed();
    });
    thread.on('error', reject).on('exit', () => reject(new Error('a thread of the grid ended early')));
    signal.addEventListener('abort', () => resolve(), { once: true });
    tell({ kind: 'begin', setup });
    for (let i = 0; i < AHEAD; i++) feed();
  });
}
