import { fail, type Result } from '../../../geo/result.ts';
import { isProgramReplaced, PROGRAM_REPLACED } from '../program-replaced.ts';
import type { Ask, EngineCallName, EngineHandlers, FromEngine, ToEngine, WorkHooks } from './protocol.ts';

/** The engine's end of the pipe: a worker's parent port, or any message port. */
export interface Port {
  postMessage(message: FromEngine): void;
  on(event: 'message', listener: (message: ToEngine) => void): unknown;
}

const CANCELLED = fail('cancelled', 'Cancelled.');

/**
 * Answers every question that comes over the port, one after the other, so that no two calls meet half-changed state.
 * @param next takes a message that waits at the port, for work that lets nothing in while it runs
 */
export function serveEngine(port: Port, handlers: EngineHandlers, next: () => ToEngine | undefined): void {
  const running = new Map<number, AbortController>();
  let last: Promise<void> = Promise.resolve();

  async function answer(message: Ask, stop: AbortController): Promise<void> {
    const hooks: WorkHooks = {
      signal: stop.signal,
      onProgress: (progress) => port.postMessage({ kind: 'progress', id: message.id, progress }),
      lookUp() {
        for (let came = next(); came; came = next()) hear(came);
        stop.signal.throwIfAborted();
      },
    };
    const result = stop.signal.aborted ? CANCELLED : await attempt(handlers, message, hooks);
    running.delete(message.id);
    port.postMessage({ kind: 'reply', id: message.id, result });
  }

  function hear(message: ToEngine): void {
    if (message.kind === 'cancel') {
      running.get(message.id)?.abort();
      return;
    }
    const stop = new AbortController();
    running.set(message.id, stop);
    last = last.then(() => answer(message, stop));
  }

  port.on('message', hear);
}

async function attempt<K extends EngineCallName>(
  handlers: EngineHandlers,
  { name, request }: Ask<K>,
  hooks: WorkHooks,
): Promise<Result<unknown>> {
  try {
    return await handlers[name](request, hooks);
  } catch (error) {
    // work that looked up and found itself given up
    if (hooks.signal.aborted) return CANCELLED;
    // where a programmer's mistake went wrong is for the log, not for the page
    console.error(error);
    if (isProgramReplaced(error)) return PROGRAM_REPLACED;
    return fail('internal', 'Something went wrong inside the program while it worked on this. Try again.');
  }
}
