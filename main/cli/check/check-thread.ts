import type { Worker } from 'node:worker_threads';
import { fail, type Result } from '../../../geo/result.ts';
import { inThread, readyThread, startThread, type ThreadHooks } from '../thread.ts';
import type { CheckDone, CheckWork } from './check-work.ts';

const FILE = 'cli/check/check-worker.js';

/** Makes a check in a thread of its own. @param start starts the thread */
export function checkInThread(
  work: CheckWork,
  hooks: ThreadHooks,
  start: (work: CheckWork) => Worker = (given) => startThread(FILE, given),
): Promise<Result<CheckDone>> {
  return inThread(work, hooks, { start, tooLarge: TOO_LARGE });
}

/** Has the thread load its program while the words are read. */
export function readyCheck(): void {
  readyThread(FILE);
}

const TOO_LARGE = fail(
  'too-large',
  'The check needs more memory than this computer gives it: the map or the drive is too large. Use a smaller extract, or check the drive in parts.',
);
