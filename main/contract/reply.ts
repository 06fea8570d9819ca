import { z } from 'zod';
import type { Problem } from '../../geo/result.ts';

/** How every call ends, whatever carries it. The message is a sentence for the user; what went on inside stays inside. */
export type Reply<T = unknown> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: Problem };

export const replySchema = z.discriminatedUnion('ok', [
  z.strictObject({ ok: z.literal(true), value: z.unknown() }),
  z.strictObject({ ok: z.literal(false), error: z.strictObject({ code: z.string(), message: z.string() }) }),
]);
