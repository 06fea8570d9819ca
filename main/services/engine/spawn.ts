import { Worker } from 'node:worker_threads';
import { builtFile } from '../built-file.ts';

/** Starts the engine's thread from its built file. */
export function spawnEngine(): Worker {
  return new Worker(builtFile('services/engine/worker.js'));
}
