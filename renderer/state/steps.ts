/** Something that is changed step by step, with the steps back and on. */
export interface Steps<T> {
  readonly before: readonly T[];
  readonly now: T;
  readonly after: readonly T[];
}

/** Steps are kept up to so many. */
const KEPT = 200;

export function firstStep<T>(now: T): Steps<T> {
  return { before: [], now, after: [] };
}

/** One step on; what was taken back before it is gone. */
export function stepTo<T>({ before, now }: Steps<T>, next: T): Steps<T> {
  return { before: [...before, now].slice(-KEPT), now: next, after: [] };
}

/** One step back; the same where there is none. */
export function stepBack<T>(steps: Steps<T>): Steps<T> {
  const { before, now, after } = steps;
  return before.length === 0
    ? steps
    : { before: before.slice(0, -1), now: before.at(-1)!, after: [now, ...after] };
}

/** One step on again that was taken back; the same where there is none. */
export function stepOn<T>(steps: Steps<T>): Steps<T> {
  const { before, now, after } = steps;
  return after.length === 0 ? steps : { before: [...before, now], now: after[0]!, after: after.slice(1) };
}
