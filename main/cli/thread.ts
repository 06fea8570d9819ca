import type { Worker } from 'node:worker_threads';
import { fail, type Result } from '../../geo/result.ts';
import { builtThread } from '../services/built-thread.ts';

/** What a thread tells of its work. */
export type FromThread<Done> =
  | { readonly kind: 'progress'; readonly what: string; readonly share: number | undefined }
  | { readonly kind: 'done'; readonly done: Result<Done> };

export interface ThreadHooks {
  onProgress(what: string, share?: number): void;
  readonly signal: AbortSignal;
}

/** A kind of work that has threads of its own. */
interface ThreadKind<Work> {
  /** starts the thread and gives it its work */
  start(work: Work): Worker;
  /** said where it needs more memory than there is */
  readonly tooLarge: Result<never>;
}

/**
 * Has work done in a thread of its own, so that this one hears Ctrl-C all along: what is done with a long drive takes
 * seconds in one go. The thread is ended with the signal. Rejects with what was thrown there.
 */
export async function inThread<Work, Done>(
  work: Work,
  { signal, onProgress }: ThreadHooks,
  { start, tooLarge }: ThreadKind<Work>,
): Promise<Result<Done>> {
  if (signal.aborted) return CANCELLED;
  const worker = start(work);
  try {
    return await new Promise<Result<Done>>((resolve, reject) => {
      signal.addEventListener('abort', () => resolve(CANCELLED), { once: true });
      worker.on('message', (message: FromThread<Done>) => {
        if (message.kind === 'done') resolve(message.done);
        else onProgress(message.what, message.share);
      });
      worker.on('error', (error) => (isOutOfMemory(error) ? resolve(tooLarge) : reject(error)));
      worker.on('exit', () => reject(new Error('the thread ended before its work')));
    });
  } finally {
    await worker.terminate();
  }
}

/** A thread that is there, by what it was built to. */
let ready: { readonly file: string; readonly worker: Worker } | undefined;

/**
 * Has a thread load its program while this one reads what it was asked: it is there sooner. Unused, it holds nothing up.
 * @param file below main/, as it is named when built: `cli/check/check-worker.js`
 */
export function readyThread(file: string): void {
  const worker = builtThread(file);
  worker.unref();
  worker
    .on('error', () => {})
    .once('exit', () => {
      if (ready?.worker === worker) ready = undefined;
    });
  ready = { file, worker };
}

/** The thread that was readied, or a new one, with its work. */
export function startThread(file: string, work: unknown): Worker {
  const thread = ready?.file === file ? ready.worker : builtThread(file);
  ready = undefined;
  thread.ref();
  thread.postMessage(work);
  return thread;
}

const CANCELLED = fail('cancelled', 'Cancelled.');

function isOutOfMemory(error: Error): boolean {
  return 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY';
}
