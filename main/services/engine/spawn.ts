import type { Worker } from 'node:worker_threads';
import { builtThread } from '../built-thread.ts';

/** Starts the engine's thread from its built file. */
export function spawnEngine(): Worker {
  return builtThread('services/engine/worker.js');
}
