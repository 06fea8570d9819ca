/**
 * What went wrong with something a user or a server gave us: one sentence saying what is wrong,
 * where, and what to do. `code` is stable and made for programs.
 */
export interface Problem {
  readonly code: string;
  readonly message: string;
}

/** The outcome of anything whose input comes from outside. Throwing is kept for programmers' mistakes. */
export type Result<T, E = Problem> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: E };

/** A result that is there. */
export function ok<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

/** A problem in place of a result. @param message a sentence for the user: what is wrong, where, what to do */
export function fail(code: string, message: string): { readonly ok: false; readonly error: Problem } {
  return { ok: false, error: { code, message } };
}

/** Closes a switch over a union: the compiler refuses the call while a case is missing. */
export function assertNever(value: never): never {
  throw new Error(`unhandled case: ${String(value)}`);
}
