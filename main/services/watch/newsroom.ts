import { HEARTBEAT_MS } from '../../contract/limits.ts';
import type { AddedFile } from '../../contract/source.ts';
import type { WatchNews } from '../../contract/calls.ts';

/** Passes news from the host to the watching pages; what nobody has heard yet waits. */
export interface Newsroom {
  opened(file: AddedFile): void;
  notice(say: string): void;
  /** Files named before any page watched; each is handed out once. */
  takeWaiting(): AddedFile[];
  /** Resolves when the signal fires. */
  watch(tell: (news: WatchNews) => void, signal: AbortSignal): Promise<void>;
}

export function createNewsroom(heartbeatMs = HEARTBEAT_MS): Newsroom {
  const watching = new Set<(news: WatchNews) => void>();
  let waiting: AddedFile[] = [];
  const tellAll = (news: WatchNews) => {
    for (const tell of watching) tell(news);
  };
  return {
    opened(file) {
      if (watching.size === 0) waiting.push(file);
      else tellAll({ kind: 'opened', file });
    },
    notice: (say) => tellAll({ kind: 'notice', say }),
    takeWaiting() {
      const taken = waiting;
      waiting = [];
      return taken;
    },
    watch(tell, signal) {
      if (signal.aborted) return Promise.resolve();
      return new Promise((resolve) => {
        watching.add(tell);
        tell({ kind: 'heartbeat' });
        for (const file of waiting) tell({ kind: 'opened', file });
        waiting = [];
        const beat = setInterval(() => tell({ kind: 'heartbeat' }), heartbeatMs);
        signal.addEventListener(
          'abort',
          () => {
            clearInterval(beat);
            watching.delete(tell);
            resolve();
          },
          { once: true },
        );
      });
    },
  };
}
