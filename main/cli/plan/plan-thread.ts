import { fail, type Result } from '../../../geo/result.ts';
import { inThread, readyThread, startThread, type ThreadHooks } from '../thread.ts';
import type { PlanDone, PlanWork } from './plan-work.ts';

const FILE = 'cli/plan/plan-worker.js';

/** Lays out a drive in a thread of its own. */
export function planInThread(work: PlanWork, hooks: ThreadHooks): Promise<Result<PlanDone>> {
  return inThread(work, hooks, { start: (given) => startThread(FILE, given), tooLarge: TOO_LARGE });
}

/** Has the thread load its program while the words are read. */
export function readyPlan(): void {
  readyThread(FILE);
}

const TOO_LARGE = fail(
  'too-large',
  'The plan needs more memory than this computer gives it: the map is too large, or the places lie too far apart. Use a smaller extract, or plan the drive in parts.',
);
