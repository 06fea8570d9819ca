import type { Pace } from '../../../main/services/fetch/pace.ts';

/** A clock that stands until something waits, and then has waited. */
export interface FastPace extends Pace {
  /** how long each wait was, seconds, in order; the pause after a question is one of them */
  readonly waitsS: readonly number[];
  /** told of every wait as it begins */
  onSleep?: (seconds: number) => void;
}

export function fastPace(start = '2026-11-21T08:00:00Z'): FastPace {
  let now = Date.parse(start);
  const waitsS: number[] = [];
  const pace: FastPace = {
    waitsS,
    now: () => new Date(now),
    async sleep(ms, signal) {
      waitsS.push(ms / 1000);
      pace.onSleep?.(ms / 1000);
      if (!signal?.aborted) now += ms;
    },
  };
  return pace;
}
