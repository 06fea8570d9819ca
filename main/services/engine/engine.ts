import type { Worker } from 'node:worker_threads';
import { fail, type Result } from '../../../geo/result.ts';
import type { Work } from '../../contract/work.ts';
import { isProgramReplaced, PROGRAM_REPLACED } from '../program-replaced.ts';
import type { Ask, Cancel, EngineCallName, EngineCalls, EngineHooks, FromEngine } from './protocol.ts';

/** The part of a worker thread that is used, so that a test can stand in for it. */
export type EngineThread = Pick<Worker, 'terminate'> & {
  postMessage<K extends EngineCallName>(message: Ask<K> | Cancel): void;
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

interface EngineState {
  readonly spawn: () => EngineThread;
  readonly letGoMs: number;
  thread: EngineThread | undefined;
  nextId: number;
  readonly pending: Map<number, Pending>;
  /** asked to stop, not answered yet */
  readonly lettingGo: Map<number, NodeJS.Timeout>;
}

/**
 * Starts the thread when first asked, and anew after it died: whoever was waiting then gets an answer, never silence.
 * @param spawn starts one thread
 */
export function createEngine(spawn: () => EngineThread, letGoMs = LET_GO_MS): Engine {
  const state: EngineState = {
    spawn,
    letGoMs,
    thread: undefined,
    nextId: 1,
    pending: new Map(),
    lettingGo: new Map(),
  };
  return {
    warm() {
      if (!state.thread) start(state);
    },
    ask(name, request, hooks) {
      if (hooks.signal.aborted) return Promise.resolve(CANCELLED);
      return ask(state, { kind: 'ask', id: state.nextId++, name, request }, hooks);
    },
    async close() {
      const closing = state.thread;
      if (!closing) return;
      died(state, closing);
      await closing.terminate();
    },
  };
}

function start(state: EngineState): EngineThread {
  const started = state.spawn();
  state.thread = started;
  started.on('message', (message) => hear(state, message));
  started.on('error', (error) => {
    console.error(error);
    died(state, started, isProgramReplaced(error) ? PROGRAM_REPLACED : STOPPED);
  });
  started.on('exit', () => died(state, started));
  return started;
}

function hear({ pending, lettingGo }: EngineState, message: FromEngine): void {
  if (message.kind === 'progress') {
    pending.get(message.id)?.onProgress(message.progress);
    return;
  }
  clearTimeout(lettingGo.get(message.id));
  lettingGo.delete(message.id);
  pending.get(message.id)?.settle(message.result);
  pending.delete(message.id);
}

function died(state: EngineState, which: EngineThread, how: Result<unknown> = STOPPED): void {
  const { lettingGo, pending } = state;
  if (which !== state.thread) return;
  state.thread = undefined;
  for (const timer of lettingGo.values()) clearTimeout(timer);
  lettingGo.clear();
  const waiting = [...pending.values()];
  pending.clear();
  for (const { settle } of waiting) settle(how);
}

function ask<K extends EngineCallName>(
  state: EngineState,
  message: Ask<K>,
  { signal, onProgress }: EngineHooks,
): Promise<Result<EngineCalls[K]['value']>> {
  const { id } = message;
  return new Promise((resolve) => {
    const onAbort = () => cancel(state, id);
    state.pending.set(id, {
      onProgress,
      settle: (result) => {
        signal.removeEventListener('abort', onAbort);
        // the thread answers each question by the handler of its name
        resolve(result as Result<EngineCalls[K]['value']>);
      },
    });
    signal.addEventListener('abort', onAbort, { once: true });
    (state.thread ?? start(state)).postMessage(message);
  });
}

/** The thread itself says how it ended: work that was done before the word came is done, and must be told so. */
function cancel(state: EngineState, id: number): void {
  const waiting = state.pending.get(id);
  const cancelled = state.thread;
  if (!waiting || !cancelled) return;
  cancelled.postMessage({ kind: 'cancel', id });
  const end = () => {
    state.pending.delete(id);
    waiting.settle(CANCELLED);
    died(state, cancelled);
    void cancelled.terminate();
  };
  state.lettingGo.set(id, setTimeout(end, state.letGoMs).unref());
}
