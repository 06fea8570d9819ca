import { setFlagsFromString } from 'node:v8';
import { Worker } from 'node:worker_threads';
import { fail, type Result } from '../../geo/result.ts';
import { builtFile } from '../services/built-file.ts';
import type { CheckDone, CheckWork } from './check-work.ts';

/** What a check's thread tells. */
export type FromCheck =
  | { readonly kind: 'progress'; readonly what: string; readonly share: number | undefined }
  | { readonly kind: 'done'; readonly done: Result<CheckDone> };

interface CheckThreadHooks {
  onProgress(what: string, share?: number): void;
  readonly signal: AbortSignal;
}

/**
 * Makes a check in a thread of its own, so that this one hears Ctrl-C all along: following and checking a long drive
 * take seconds in one go. The thread is ended with the signal. Rejects with what was thrown there.
 * @param start starts the thread
 */
export async function checkInThread(
  work: CheckWork,
  hooks: CheckThreadHooks,
  start: (work: CheckWork) => Worker = startThread,
): Promise<Result<CheckDone>> {
  const { signal } = hooks;
  if (signal.aborted) return CANCELLED;
  const worker = start(work);
  try {
    return await new Promise<Result<CheckDone>>((resolve, reject) => {
      signal.addEventListener('abort', () => resolve(CANCELLED), { once: true });
      worker.on('message', (message: FromCheck) => {
        if (message.kind === 'done') resolve(message.done);
        else hooks.onProgress(message.what, message.share);
      });
      worker.on('error', (error) => (isOutOfMemory(error) ? resolve(TOO_LARGE) : reject(error)));
      worker.on('exit', () => reject(new Error('the thread of the check ended early')));
    });
  } finally {
    await worker.terminate();
  }
}

/**
 * How much a function must have run before V8 compiles it for speed: four times as much as otherwise. A check runs
 * once, and most of what would be compiled is ready when it is nearly over; measured on 300 km, a fifth to a third of
 * all processor time is saved and none of it by the clock of an idle machine is lost.
 */
const LESS_COMPILING = '--interrupt-budget=300000';
/** Later ones weigh it in another way, and complain of a word they do not know. */
const KNOWS_IT = Number.parseInt(process.versions.v8, 10) < 12;

let ready: Worker | undefined;

/** Has a thread load the program while this one reads what it was asked: it is there sooner. Unused, it holds nothing up. */
export function readyThread(): void {
  const one = newThread();
  one.unref();
  one
    .on('error', () => {})
    .once('exit', () => {
      if (ready === one) ready = undefined;
    });
  ready = one;
}

function startThread(work: CheckWork): Worker {
  const thread = ready ?? newThread();
  ready = undefined;
  thread.ref();
  thread.postMessage(work);
  return thread;
}

function newThread(): Worker {
  if (KNOWS_IT) setFlagsFromString(LESS_COMPILING);
  return new Worker(builtFile('cli/check-worker.js'));
}

const CANCELLED = fail('cancelled', 'Cancelled.');
const TOO_LARGE = fail(
  'too-large',
  'The check needs more memory than this computer gives it: the map or the drive is too large. Use a smaller extract, or check the drive in parts.',
);

function isOutOfMemory(error: Error): boolean {
  return 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY';
}
