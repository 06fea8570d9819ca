import { parentPort } from 'node:worker_threads';
import type { FromThread } from '../thread.ts';
import { type CheckDone, type CheckWork, makeCheck } from './check-work.ts';

const say = (message: FromThread<CheckDone>): void => parentPort?.postMessage(message);

const work = await new Promise<CheckWork>((resolve) => parentPort?.once('message', resolve));
const done = await makeCheck(work, {
  onProgress: (what, share) => say({ kind: 'progress', what, share }),
  now: () => new Date(),
});
say({ kind: 'done', done });
