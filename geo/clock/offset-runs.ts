import { clockOf } from './zone.ts';

/** A stretch of time through which the clocks of a zone stay as they are set. */
export interface OffsetRun {
  /** milliseconds since 1970; it ends where the next begins */
  readonly fromMs: number;
  /** how far the clocks are ahead of UTC */
  readonly offsetMinutes: number;
}

/** Clocks are not changed twice within this. */
const LEAST_APART_MS = 12 * 3_600_000;
const MINUTE_MS = 60_000;

/**
 * How the clocks of a zone (IANA name) are set through a stretch of time, milliseconds since 1970: one run, or more
 * where they are put forward or back, to the minute. None where the zone or the time is not known.
 */
export function offsetRuns(zone: string, fromMs: number, toMs: number): OffsetRun[] {
  const offsetAt = (ms: number) => {
    const clock = clockOf(zone, ms);
    return clock.ok ? clock.value.offsetMinutes : undefined;
  };
  const first = offsetAt(fromMs);
  if (first === undefined) return [];
  const runs: OffsetRun[] = [{ fromMs, offsetMinutes: first }];
  for (let ms = fromMs, before = first; ms < toMs; ) {
    const nextMs = Math.min(toMs, ms + LEAST_APART_MS);
    const after = offsetAt(nextMs) ?? before;
    if (after !== before) {
      let [still, changed] = [Math.floor(ms / MINUTE_MS), Math.ceil(nextMs / MINUTE_MS)];
      while (changed - still > 1) {
        const middle = Math.floor((still + changed) / 2);
        if (offsetAt(middle * MINUTE_MS) === before) still = middle;
        else changed = middle;
      }
      runs.push({ fromMs: changed * MINUTE_MS, offsetMinutes: after });
    }
    ms = nextMs;
    before = after;
  }
  return runs;
}

/** The offset in force at a moment. */
export function offsetIn(runs: readonly OffsetRun[], ms: number): number | undefined {
  return (runs.findLast((run) => run.fromMs <= ms) ?? runs[0])?.offsetMinutes;
}
