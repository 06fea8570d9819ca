import { parentPort } from 'node:worker_threads';
import type { FromCheck } from './check-thread.ts';
import { type CheckWork, makeCheck } from './check-work.ts';

const say = (message: FromCheck): void => parentPort?.postMessage(message);

const work = await new Promise<CheckWork>((resolve) => parentPort?.once('message', resolve));
const done = await makeCheck(work, {
  onProgress: (what, share) => say({ kind: 'progress', what, share }),
  now: () => new Date(),
});
say({ kind: 'done', done });
