import { fail } from '../../geo/result.ts';

/** What a running program is refused with once an update, or somebody, has put other files in its files' place. */
export const PROGRAM_REPLACED = fail(
  'program-replaced',
  'Files of the program were replaced or removed while it was running. Close it and start it again; what was saved is kept.',
);

/** Codes of Node for a part of a program that is not there. */
const NOT_THERE = new Set(['ERR_MODULE_NOT_FOUND', 'MODULE_NOT_FOUND']);

/**
 * Whether an error came of loading a part of the program that is gone, or that no longer fits the others: parts are
 * loaded when they are first needed, and threads when they are first asked.
 */
export function isProgramReplaced(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  if ('code' in error && typeof error.code === 'string' && NOT_THERE.has(error.code)) return true;
  // V8 gives a part that lacks what another imports from it no code
  return error instanceof SyntaxError && error.message.includes('does not provide an export named');
}
