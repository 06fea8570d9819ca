import type { Worker } from 'node:worker_threads';
import { fail, type Result } from '../../../geo/result.ts';
import type { Work } from '../../contract/calls.ts';
import type { EngineCallName, EngineCalls, EngineHooks, FromEngine, ToEngine } from './protocol.ts';

/** The part of a worker thread that is used, so that a test can stand in for it. */
export type EngineThread = Pick<Worker, 'postMessage' | 'terminate'> & {
  on(event: 'message', listener: (message: FromEngine) => void): unknown;
  on(event: 'error', listener: (error: Error) => void): unknown;
  on(event: 'exit', listener: () => void): unknown;
};

/** The one thread that holds the open map and the open drives. */
export interface Engine {
  /** Starts the thread ahead of the first question: loading its code takes longer than opening a small map. */
  warm(): void;
  ask<K extends EngineCallName>(
    name: K,
    request: EngineCalls[K]['request'],
    hooks: EngineHooks,
  ): Promise<Result<EngineCalls[K]['value']>>;
  close(): Promise<void>;
}

interface Pending {
  settle(result: Result<unknown>): void;
  onProgress(work: Work): void;
}

const STOPPED = fail(
  'engine-stopped',
  'The part of the program that reads maps stopped unexpectedly. It has been started again: try once more; if it stops again, the map may be too large for this computer.',
);
const CANCELLED = fail('cancelled', 'Cancelled.');

/** Cancelled work that has not let go after this long is ended with its thread. */
const LET_GO_MS = 4000;

/**
 * Starts the thread when first asked, and anew after it died: whoever was waiting then gets an answer, never silence.
 * @param spawn starts one thread
 */
export function createEngine(spawn: () => EngineThread, letGoMs = LET_GO_MS): Engine {
  let thread: EngineThread | undefined;
  let nextId = 1;
  const pending = new Map<number, Pending>();
  // asked to stop, not answered yet
  const lettingGo = new Map<number, NodeJS.Timeout>();

  function died(which: EngineThread): void {
    if (which !== thread) return;
    thread = undefined;
    for (const timer of lettingGo.values()) clearTimeout(timer);
    lettingGo.clear();
    const waiting = [...pending.values()];
    pending.clear();
    for (const { settle } of waiting) settle(STOPPED);
  }

  function start(): EngineThread {
    const started = spawn();
    thread = started;
    started.on('message', (message) => {
      if (message.kind === 'progress') {
        pending.get(message.id)?.onProgress(message.progress);
        return;
      }
      clearTimeout(lettingGo.get(message.id));
      lettingGo.delete(message.id);
      pending.get(message.id)?.settle(message.result);
      pending.delete(message.id);
    });
    started.on('error', (error) => {
      console.error(error);
      died(started);
    });
    started.on('exit', () => died(started));
    return started;
  }

  // the thread itself says how it ended: work that was done before the word came is done, and must be told so
  function cancel(id: number): void {
    const waiting = pending.get(id);
    const cancelled = thread;
    if (!waiting || !cancelled) return;
    send(cancelled, { kind: 'cancel', id });
    const end = () => {
      pending.delete(id);
      waiting.settle(CANCELLED);
      died(cancelled);
      void cancelled.terminate();
    };
    lettingGo.set(id, setTimeout(end, letGoMs).unref());
  }

  return {
    warm() {
      if (!thread) start();
    },
    ask<K extends EngineCallName>(name: K, request: EngineCalls[K]['request'], hooks: EngineHooks) {
      if (hooks.signal.aborted) return Promise.resolve(CANCELLED);
      return new Promise<Result<EngineCalls[K]['value']>>((resolve) => {
        const id = nextId++;
        const onAbort = () => cancel(id);
        pending.set(id, {
          onProgress: hooks.onProgress,
          settle: (result) => {
            hooks.signal.removeEventListener('abort', onAbort);
            resolve(result as Result<EngineCalls[K]['value']>);
          },
        });
        hooks.signal.addEventListener('abort', onAbort, { once: true });
        send(thread ?? start(), { kind: 'ask', id, name, request });
      });
    },
    async close() {
      const closing = thread;
      if (!closing) return;
      died(closing);
      await closing.terminate();
    },
  };
}

function send(thread: EngineThread, message: ToEngine): void {
  thread.postMessage(message);
}
