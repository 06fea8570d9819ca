import { createEngine, type Engine, type EngineThread } from './engine.ts';
import { inTurn } from './in-turn.ts';
import { reopeningEngine } from './reopening-engine.ts';
import { spawnEngine } from './spawn.ts';

/**
 * The engine behind the calls of a window: one question at a time, given up at a word, and open again by itself after
 * its thread ended.
 * @param letGoMs given-up work that has not stopped after this long is ended with its thread
 */
export function openEngine(spawn: () => EngineThread = spawnEngine, letGoMs?: number): Engine {
  return inTurn(reopeningEngine(createEngine(spawn, letGoMs)));
}
