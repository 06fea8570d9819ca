import { Worker } from 'node:worker_threads';
import { builtScript } from '../../built-script.ts';

/** Starts the engine's thread from its built file. */
export function spawnEngine(): Worker {
  return new Worker(builtScript('main/services/engine/worker'));
}
