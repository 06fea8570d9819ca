import { Cancelled } from '../../map/map-reading.ts';
import {
  type DoneOf,
  type EndOf,
  type SetupOf,
  STAGES,
  type StageName,
  type TaskOf,
} from './stages/index.ts';

/** Works through the stages of an import. */
export interface Runner {
  /** How many workers a stage may have. */
  readonly workers: number;
  /**
   * Has all tasks of a stage done, in any order.
   * @param onDone told after each task how many are done
   * @returns what each task gave, in the tasks' order, and what each worker had to tell in the end
   */
  run<K extends StageName>(
    stage: K,
    setup: SetupOf<K>,
    tasks: readonly TaskOf<K>[],
    onDone: (done: number) => void,
  ): Promise<StageOutcome<K>>;
  /** Has the workers started while something else is done. */
  prepare(): void;
  /** Ends the workers; a later stage starts new ones. */
  close(): Promise<void>;
}

export interface StageOutcome<K extends StageName> {
  readonly done: DoneOf<K>[];
  readonly ends: EndOf<K>[];
}

/** A stage of which only a worker knows what it takes and gives. */
interface AnyStage {
  run(task: unknown): unknown;
  end(): unknown;
}

/** Begins a stage; what it is given was typed where it was sent. */
export function beginStage(stage: StageName, setup: unknown, worker: number): AnyStage {
  const Stage = STAGES[stage] as unknown as new (setup: unknown, worker: number) => AnyStage;
  return new Stage(setup, worker);
}

/**
 * The same with new workers for every stage: what threads took of the system's memory is given back only when they
 * end, and of a large map each stage takes its own.
 */
export function withFreshWorkers(runner: Runner): Runner {
  return {
    workers: runner.workers,
    async run(stage, setup, tasks, onDone) {
      const outcome = await runner.run(stage, setup, tasks, onDone);
      await runner.close();
      runner.prepare();
      return outcome;
    },
    prepare: () => runner.prepare(),
    close: () => runner.close(),
  };
}

/** Works in the thread that asks; other work is let in between two tasks. */
export function runHere(signal?: AbortSignal): Runner {
  return {
    workers: 1,
    async run(name, setup, tasks, onDone) {
      const stage = beginStage(name, setup, 0);
      const done: unknown[] = [];
      for (const task of tasks) {
        if (signal?.aborted) throw new Cancelled();
        done.push(await stage.run(task));
        onDone(done.length);
        await new Promise((resolve) => setImmediate(resolve));
      }
      return { done, ends: [stage.end()] } as StageOutcome<typeof name>;
    },
    prepare: () => {},
    close: async () => {},
  };
}
