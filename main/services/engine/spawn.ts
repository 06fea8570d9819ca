import { Worker } from 'node:worker_threads';

/** Starts the engine's thread from its built file. */
export function spawnEngine(): Worker {
  return new Worker(builtFile(import.meta.url, 'worker'));
}

/** A built script beside this module, also when this module itself runs from its source. */
function builtFile(here: string, name: string): URL {
  if (here.endsWith('.js')) return new URL(`./${name}.js`, here);
  return new URL(`../../../.build/main/services/engine/${name}.js`, here);
}
