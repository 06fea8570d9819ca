interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** microseconds */
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** A task as long as it took, and the work of its own thread within that: the rest it waited, for other threads or for its turn. */
export interface Task {
  readonly wallMs: number;
  readonly cpuMs: number;
}

/** Longest tasks of the page's main threads, milliseconds, longest first. */
export function tasksIn(trace: Buffer): Task[] {
  const { traceEvents } = JSON.parse(trace.toString('utf8')) as { traceEvents: TraceEvent[] };
  const main = new Set(
    traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(({ pid, tid }) => `${pid} ${tid}`),
  );
  // the same task is traced under two names, one within the other
  let endOfLast = 0;
  return traceEvents
    .filter(({ name, pid, tid }) => name.endsWith('RunTask') && main.has(`${pid} ${tid}`))
    .sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0))
    .filter(({ ts, dur = 0 }) => {
      if (ts < endOfLast) return false;
      endOfLast = ts + dur;
      return true;
    })
    .map(({ dur = 0, tdur = 0 }) => ({ wallMs: dur / 1000, cpuMs: tdur / 1000 }))
    .sort((a, b) => b.wallMs - a.wallMs);
}
