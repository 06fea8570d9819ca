import type { Result } from '../../../geo/result.ts';
import {
  type Afterwards,
  type Change,
  type KeptFile,
  type KeptFileOptions,
  keptFile,
  type Updated,
} from './kept-file.ts';

/** A kept file, what was last read of it, and all that was ever wrong with it. */
export interface RememberedFile<T> {
  /** as last read or written; undefined while there is none */
  last(): T | undefined;
  refresh(): Promise<void>;
  update(change: Change<T>, afterwards?: Afterwards<T>): Promise<Result<Updated<T>>>;
  notices(): readonly string[];
}

/** Binds a kept file and reads it. */
export async function rememberedFile<T>(options: KeptFileOptions<T>): Promise<RememberedFile<T>> {
  const file: KeptFile<T> = keptFile(options);
  const notices = new Set<string>();
  let last: T | undefined;
  const hear = (found: { readonly value?: T; readonly notices: readonly string[] }) => {
    last = found.value ?? last;
    for (const say of found.notices) notices.add(say);
  };
  hear(await file.read());
  return {
    last: () => last,
    notices: () => [...notices],
    async refresh() {
      hear(await file.read());
    },
    async update(change, afterwards) {
      const updated = await file.update(change, afterwards);
      if (updated.ok) hear(updated.value);
      return updated;
    },
  };
}
