/**
 * How long a server asks to be left alone, milliseconds, by its Retry-After: whole seconds, or a date (RFC 9110, 10.2.3).
 * Undefined where it asks for nothing, for a time gone by, or in no such form.
 */
export function retryAfterMs(header: string | undefined, nowMs: number): number | undefined {
  if (header === undefined) return undefined;
  const ms = /^\d+$/u.test(header.trim()) ? Number(header) * 1000 : Date.parse(header) - nowMs;
  return Number.isFinite(ms) && ms > 0 ? ms : undefined;
}
