import type { Result } from '../../../geo/result.ts';
import type { Library } from '../../services/library/library.ts';
import type { Terminal } from '../terminal.ts';

/** What a command of the yard gives. */
export interface YardSaid {
  /** what is printed */
  readonly text: string;
  /** what could not be used of several, a sentence each; the exit code is 2 then */
  readonly refused?: readonly string[];
}

/** One of them. @param words those after its own */
export type YardCommand = (
  words: readonly string[],
  terminal: Terminal,
  library: Library,
) => Promise<Result<YardSaid>>;
