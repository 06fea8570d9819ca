import type { Result } from '../../../geo/result.ts';
import type { Pace } from '../../services/fetch/pace.ts';
import type { ShelfTools } from '../../services/shelf/shelf-work.ts';
import type { Terminal } from '../terminal.ts';

/** What a command of the shelf gives: what is printed, and the exit code. */
export interface ShelfSaid {
  readonly text: string;
  readonly exit: number;
}

/** One of them. @param words those after its own */
export type ShelfCommand = (
  words: readonly string[],
  terminal: Terminal,
  tools: ShelfTools & { readonly pace: Pace },
) => Promise<Result<ShelfSaid>>;
