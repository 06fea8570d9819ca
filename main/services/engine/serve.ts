import { fail, type Result } from '../../../geo/result.ts';
import type { Ask, EngineCallName, EngineHandlers, EngineHooks, FromEngine, ToEngine } from './protocol.ts';

/** The engine's end of the pipe: a worker's parent port, or any message port. */
export interface Port {
  postMessage(message: FromEngine): void;
  on(event: 'message', listener: (message: ToEngine) => void): unknown;
}

/** Answers every question that comes over the port, one after the other, so that no two calls meet half-changed state. */
export function serveEngine(port: Port, handlers: EngineHandlers): void {
  const running = new Map<number, AbortController>();
  let last: Promise<void> = Promise.resolve();

  async function answer(message: Ask, stop: AbortController): Promise<void> {
    const hooks: EngineHooks = {
      signal: stop.signal,
      onProgress: (progress) => port.postMessage({ kind: 'progress', id: message.id, progress }),
    };
    const result = stop.signal.aborted
      ? fail('cancelled', 'Cancelled.')
      : await attempt(handlers, message, hooks);
    running.delete(message.id);
    port.postMessage({ kind: 'reply', id: message.id, result });
  }

  port.on('message', (message) => {
    if (message.kind === 'cancel') {
      running.get(message.id)?.abort();
      return;
    }
    const stop = new AbortController();
    running.set(message.id, stop);
    last = last.then(() => answer(message, stop));
  });
}

async function attempt<K extends EngineCallName>(
  handlers: EngineHandlers,
  { name, request }: Ask<K>,
  hooks: EngineHooks,
): Promise<Result<unknown>> {
  try {
    return await handlers[name](request, hooks);
  } catch (error) {
    // where a programmer's mistake went wrong is for the log, not for the page
    console.error(error);
    return fail('internal', 'Something went wrong inside the program while it worked on this. Try again.');
  }
}
