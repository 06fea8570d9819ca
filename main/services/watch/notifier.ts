import type { WatchNews } from '../../contract/calls.ts';
import { HEARTBEAT_MS } from '../../contract/limits.ts';
import type { AddedFile } from '../../contract/source.ts';

/** Passes news from the host to the watching pages; what nobody has heard yet waits for the first that watches. */
export interface Notifier {
  opened(file: AddedFile): void;
  notice(say: string): void;
  /** Files named before any page watched; each is handed out once. */
  takeWaiting(): AddedFile[];
  /** Resolves when the signal fires. */
  watch(tell: Tell, signal: AbortSignal): Promise<void>;
}

type Tell = (news: WatchNews) => void;

interface NotifierState {
  readonly watching: Set<Tell>;
  waiting: WatchNews[];
}

/** @param heartbeatMs how often a watching page hears that the program is there */
export function createNotifier(heartbeatMs = HEARTBEAT_MS): Notifier {
  const state: NotifierState = { watching: new Set(), waiting: [] };
  return {
    opened: (file) => tellAll(state, { kind: 'opened', file }),
    notice: (say) => tellAll(state, { kind: 'notice', say }),
    takeWaiting: () => takeWaiting(state),
    watch: (tell, signal) => watchUntil(state, tell, signal, heartbeatMs),
  };
}

function tellAll({ watching, waiting }: NotifierState, news: WatchNews): void {
  if (watching.size === 0) waiting.push(news);
  for (const tell of watching) tell(news);
}

function takeWaiting(state: NotifierState): AddedFile[] {
  const files = state.waiting.flatMap((news) => (news.kind === 'opened' ? [news.file] : []));
  state.waiting = state.waiting.filter((news) => news.kind !== 'opened');
  return files;
}

function watchUntil(
  state: NotifierState,
  tell: Tell,
  signal: AbortSignal,
  heartbeatMs: number,
): Promise<void> {
  if (signal.aborted) return Promise.resolve();
  return new Promise((resolve) => {
    const beat = setInterval(() => tell({ kind: 'heartbeat' }), heartbeatMs);
    const leave = () => {
      clearInterval(beat);
      state.watching.delete(tell);
      resolve();
    };
    signal.addEventListener('abort', leave, { once: true });
    state.watching.add(tell);
    tell({ kind: 'heartbeat' });
    for (const news of state.waiting) tell(news);
    state.waiting = [];
  });
}
