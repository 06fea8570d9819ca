import { parentPort, workerData } from 'node:worker_threads';
import type { FromCheck } from './check-thread.ts';
import { type CheckWork, makeCheck } from './check-work.ts';

const say = (message: FromCheck): void => parentPort?.postMessage(message);

const done = await makeCheck(workerData as CheckWork, {
  onProgress: (what, share) => say({ kind: 'progress', what, share }),
  now: () => new Date(),
});
say({ kind: 'done', done });
