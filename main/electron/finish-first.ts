import { app } from 'electron';

/** What still runs then is given up: everything on disk is replaced whole or not at all. */
const LONGEST_MS = 10_000;

/** Ends the program only when what it was writing is written. @param finish ends the work that is under way */
export function finishFirst(finish: () => Promise<unknown>): void {
  let state: 'open' | 'finishing' | 'done' = 'open';
  app.on('will-quit', (event) => {
    if (state === 'done') return;
    event.preventDefault();
    if (state === 'finishing') return;
    state = 'finishing';
    const late = new Promise((resolve) => setTimeout(resolve, LONGEST_MS).unref());
    void Promise.race([finish(), late]).finally(() => {
      state = 'done';
      app.quit();
    });
  });
}
