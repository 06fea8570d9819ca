import type { Result } from '../../../geo/result.ts';

/** A kept value: read once, changed only by saving. */
export interface Store<T> {
  current(): T;
  save(value: T): Promise<Result<T>>;
  /** sentences about what was wrong with the file when it was read */
  readonly notices: readonly string[];
}
