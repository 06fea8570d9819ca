import type { Result } from '../../../geo/result.ts';

/** A kept value. It changes by saving, and by looking again at what another program has saved. */
export interface Store<T> {
  current(): T;
  /** Looks at what lies there now. */
  refresh(): Promise<void>;
  /**
   * Keeps a change. What another window or program has changed meanwhile stays.
   * @param known what the change was made from; without it what was last read here
   */
  save(changed: T, known?: T): Promise<Result<Saved<T>>>;
  /** sentences about what was wrong with the file */
  notices(): readonly string[];
}

export interface Saved<T> {
  /** what is kept now */
  readonly value: T;
  /** what of others was found and what became of it, one sentence each */
  readonly say: readonly string[];
}
