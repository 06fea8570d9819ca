import type { ServerResponse } from 'node:http';

export interface PageCountOptions {
  /** a page is there */
  readonly onPage: (() => void) | undefined;
  /** the last page has been gone for a while after there was one */
  readonly onGone: () => void;
  readonly goneAfterMs: number;
}

/** Knows whether a page is there: each has one call open that never ends. */
export interface PageCount {
  /** @param response of the page's endless call */
  add(response: ServerResponse): void;
  /** Pages that end from now on are not waited for. */
  close(): void;
}

interface PageCountState {
  open: number;
  gone: NodeJS.Timeout | undefined;
  closed: boolean;
}

/** A count of no pages yet. */
export function countPages(options: PageCountOptions): PageCount {
  const state: PageCountState = { open: 0, gone: undefined, closed: false };
  return {
    add(response) {
      state.open++;
      options.onPage?.();
      clearTimeout(state.gone);
      response.once('close', () => leave(state, options));
    },
    close() {
      state.closed = true;
      clearTimeout(state.gone);
    },
  };
}

function leave(state: PageCountState, { onGone, goneAfterMs }: PageCountOptions): void {
  state.open--;
  // a page cut off by the closing itself is not waited for
  if (state.open === 0 && !state.closed) state.gone = setTimeout(onGone, goneAfterMs);
}
