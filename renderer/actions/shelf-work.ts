import { given } from '../../geo/given.ts';
import { shelfWork, type Told, tellAlso, work } from '../state/happening.ts';
import { dialog } from '../state/page.ts';
import { shelfTold, shelfWaiting } from '../state/shelf.ts';
import { inLine } from './in-line.ts';
import type { Job } from './long-work.ts';

const line = inLine();

/**
 * Runs one piece of work on the shelf when those before it are done, and shows it with its own way to stop: opening
 * another drive does not end it.
 */
export async function runOnShelf<T>(what: string, run: (job: Job) => Promise<T>): Promise<T> {
  shelfWaiting.value++;
  return line(async () => {
    shelfWaiting.value--;
    const stop = new AbortController();
    const tell: Job['tell'] = ({ what: now, share, secondsLeft }) => {
      shelfWork.value = { what: now, ...given({ share, secondsLeft }), stop: () => stop.abort() };
    };
    tell({ what });
    try {
      return await run({ signal: stop.signal, tell });
    } finally {
      shelfWork.value = undefined;
    }
  });
}

/** Says it where the user looks: in the shelf's dialog, else over the view. */
export function tellOfShelf(told: Told): void {
  if (dialog.peek() === 'shelf') shelfTold.value = told;
  else tellAlso(told);
}

/** Waits for an opening that is under way: the user's own comes first. */
export function openingDone(): Promise<void> {
  return new Promise((resolve) => {
    const stop = work.subscribe((doing) => {
      if (doing) return;
      // not before `stop` is known
      queueMicrotask(() => {
        stop();
        resolve();
      });
    });
  });
}
