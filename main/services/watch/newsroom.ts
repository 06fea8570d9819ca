import type { WatchNews } from '../../contract/calls.ts';
import { HEARTBEAT_MS } from '../../contract/limits.ts';
import type { AddedFile } from '../../contract/source.ts';

/** Passes news from the host to the watching pages; what nobody has heard yet waits. */
export interface Newsroom {
  opened(file: AddedFile): void;
  notice(say: string): void;
  /** Files named before any page watched; each is handed out once. */
  takeWaiting(): AddedFile[];
  /** Resolves when the signal fires. */
  watch(tell: (news: WatchNews) => void, signal: AbortSignal): Promise<void>;
}

/** News for whoever watches; kept for the first to come while nobody does. */
export function createNewsroom(heartbeatMs = HEARTBEAT_MS): Newsroom {
  const watching = new Set<(news: WatchNews) => void>();
  let waiting: WatchNews[] = [];
  const tellAll = (news: WatchNews) => {
    if (watching.size === 0) waiting.push(news);
    for (const tell of watching) tell(news);
  };
  return {
    opened: (file) => tellAll({ kind: 'opened', file }),
    notice: (say) => tellAll({ kind: 'notice', say }),
    takeWaiting() {
      const files = waiting.flatMap((news) => (news.kind === 'opened' ? [news.file] : []));
      waiting = waiting.filter((news) => news.kind !== 'opened');
      return files;
    },
    watch(tell, signal) {
      if (signal.aborted) return Promise.resolve();
      return new Promise((resolve) => {
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
        watching.add(tell);
        tell({ kind: 'heartbeat' });
        for (const news of waiting) tell(news);
        waiting = [];
      });
    },
  };
}
