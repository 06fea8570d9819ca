import { fail } from '../../../geo/result.ts';
import type { Engine } from './engine.ts';

const CANCELLED = fail('cancelled', 'Cancelled.');

interface Waiting {
  begin(): void;
  giveUp(): void;
}

interface Line {
  readonly waiting: Set<Waiting>;
  busy: boolean;
}

/**
 * An engine that is asked one question at a time; the others wait here, not in its thread. So one that is given up
 * while it waits is answered at once, and a thread that ends takes no more than its own question with it.
 */
export function inTurn(engine: Engine): Engine {
  const line: Line = { waiting: new Set(), busy: false };
  return {
    warm: () => engine.warm(),
    async ask(name, request, hooks) {
      if (!(await turnOf(line, hooks.signal))) return CANCELLED;
      try {
        return await engine.ask(name, request, hooks);
      } finally {
        line.busy = false;
        goOn(line);
      }
    },
    async close() {
      for (const each of [...line.waiting]) each.giveUp();
      await engine.close();
    },
  };
}

/** @returns whether its turn has come; false when it was given up before */
function turnOf(line: Line, signal: AbortSignal): Promise<boolean> {
  if (signal.aborted) return Promise.resolve(false);
  return new Promise((resolve) => {
    const leave = (turnCame: boolean) => {
      signal.removeEventListener('abort', giveUp);
      line.waiting.delete(waiting);
      resolve(turnCame);
    };
    const giveUp = () => leave(false);
    const waiting: Waiting = { giveUp, begin: () => leave(true) };
    signal.addEventListener('abort', giveUp, { once: true });
    line.waiting.add(waiting);
    goOn(line);
  });
}

/** Lets in whoever has waited longest. */
function goOn(line: Line): void {
  const [next] = line.waiting;
  if (line.busy || !next) return;
  line.busy = true;
  next.begin();
}
