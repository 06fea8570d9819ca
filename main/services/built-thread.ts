import { setFlagsFromString } from 'node:v8';
import { Worker } from 'node:worker_threads';
import { builtFile } from './built-file.ts';

/**
 * How much a function must have run before V8 compiles it for speed: four times as much as otherwise. A check runs
 * once, and most of what would be compiled is ready when it is nearly over; measured on 300 km, a fifth to a third of
 * all processor time is saved and none of it by the clock of an idle machine is lost. Planning 325 km: a fifth; the
 * window's first findings: a fifth of the time; later vehicles on an opened map: nothing lost.
 */
const LESS_COMPILING = '--interrupt-budget=300000';
/** Later ones weigh it in another way, and complain of a word they do not know. */
const KNOWS_IT = Number.parseInt(process.versions.v8, 10) < 12;

/**
 * A thread that checks drives.
 * @param file below main/, as it is named when built: `cli/check/check-worker.js`
 */
export function builtThread(file: string): Worker {
  if (KNOWS_IT) setFlagsFromString(LESS_COMPILING);
  return new Worker(builtFile(file));
}
