/** What time it is, and how to wait: handed in, so that tests of an hour's patience run in no time. */
export interface Pace {
  now(): Date;
  /** Comes back after so long, or at once when the signal is given. */
  sleep(ms: number, signal?: AbortSignal): Promise<void>;
}

/** The clock on the wall. */
export const REAL_PACE: Pace = {
  now: () => new Date(),
  sleep: (ms, signal) =>
    new Promise((resolve) => {
      if (signal?.aborted) return resolve();
      const done = () => {
        clearTimeout(timer);
        signal?.removeEventListener('abort', done);
        resolve();
      };
      const timer = setTimeout(done, ms);
      signal?.addEventListener('abort', done);
    }),
};
