import type { Problem } from '../../geo/result.ts';

/** How every call ends, whatever carries it. The message is a sentence for the user; what went on inside stays inside. */
export type Reply<T = unknown> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: Problem };
