import { availableParallelism } from 'node:os';
import type { Worker } from 'node:worker_threads';
import { builtThread } from '../../built-thread.ts';
import { isProgramReplaced } from '../../program-replaced.ts';
import type { DriveTask, FromJudge, JudgeSetup, ToJudge } from './messages.ts';

/** Each holds the roads about a drive; more than these would only wait for the disk. */
const MOST_THREADS = 8;
/** What waits for a thread at a time: it need not wait for the answer to be read. */
const AHEAD = 2;

/** So many threads ending early one after the other, with nothing done between, are no drive's fault. */
const MOST_ENDED = 3;

const CUT_OFF =
  'Checking it was cut off: a part of the program ended early, perhaps for want of memory. Check it again; if that happens again, drive it in parts.';

/** What is needed of a thread. */
type JudgeThread = Pick<Worker, 'postMessage' | 'terminate' | 'on'>;

interface Hooks {
  hear(news: FromJudge): void;
  readonly signal: AbortSignal;
}

/**
 * Judges all drives on all cores, in the order given. Where a thread ends early the drive it was at is told as failed, and
 * another goes on with the rest.
 * @param hear what is heard of a cell or a drive, as it comes
 * @param start begins a thread
 * @returns when all are done, or with the signal; rejects where threads do nothing but end
 */
export async function judgeInThreads(
  tasks: readonly DriveTask[],
  setup: JudgeSetup,
  hooks: Hooks,
  start: () => JudgeThread = () => builtThread('services/yard/grid/worker.js'),
): Promise<void> {
  const count = Math.min(MOST_THREADS, availableParallelism(), tasks.length);
  const queue = [...tasks];
  await Promise.all(Array.from({ length: count }, () => workThrough(queue, setup, hooks, start)));
}

async function workThrough(
  queue: DriveTask[],
  setup: JudgeSetup,
  hooks: Hooks,
  start: () => JudgeThread,
): Promise<void> {
  let ended = 0;
  while (!hooks.signal.aborted && queue.length > 0) {
    const thread = start();
    const { left, done, fault } = await drain(thread, queue, setup, hooks).finally(() => thread.terminate());
    if (isProgramReplaced(fault)) throw fault;
    if (left.length === 0) return;
    ended = done > 0 ? 1 : ended + 1;
    const [at, ...waiting] = left;
    if (at) hooks.hear({ kind: 'failed', drive: at.drive, say: CUT_OFF });
    for (const task of waiting.reverse()) queue.unshift(task);
    if (ended >= MOST_ENDED) throw new Error('threads of the grid end early, one after the other');
  }
}

/** What a thread had before it when it ended, and how many drives it had done. */
interface Drained {
  readonly left: readonly DriveTask[];
  readonly done: number;
  /** what it ended of, where that is known */
  readonly fault?: unknown;
}

function drain(
  thread: JudgeThread,
  queue: DriveTask[],
  setup: JudgeSetup,
  { hear, signal }: Hooks,
): Promise<Drained> {
  return new Promise((resolve) => {
    const before: DriveTask[] = [];
    let done = 0;
    const end = (fault?: unknown) => resolve({ left: before, done, fault });
    const tell = (message: ToJudge) => thread.postMessage(message);
    const feed = () => {
      const task = signal.aborted ? undefined : queue.shift();
      if (task !== undefined) {
        before.push(task);
        tell({ kind: 'drive', task });
      } else if (before.length === 0) end();
    };
    thread.on('message', (news: FromJudge) => {
      if (signal.aborted) return;
      hear(news);
      if (news.kind === 'cell') return;
      before.shift();
      done++;
      feed();
    });
    thread.on('error', (error) => {
      console.error(error);
      end(error);
    });
    thread.on('exit', () => end());
    signal.addEventListener('abort', () => resolve({ left: [], done }), { once: true });
    if (signal.aborted) resolve({ left: [], done });
    tell({ kind: 'begin', setup });
    for (let i = 0; i < AHEAD; i++) feed();
  });
}
