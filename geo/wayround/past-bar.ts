import type { NoWayRound, WayRound } from '../report/way-round.ts';
import { type Bar, barsOf, together } from './past/bars.ts';
import { keeping, type Passed, withJoint } from './past/joint.ts';
import type { JudgedWay } from './past/judge-way.ts';
import { tellWay } from './past/tell-way.ts';
import { layTrip, type PastInput, type Trip } from './past/trip.ts';
import { waysPast } from './past/ways-past.ts';
import { whyNot } from './why-not.ts';

export interface WaysRound {
  /** best first for each bar, in driving order */
  readonly waysRound: readonly WayRound[];
  readonly noWayRound: readonly NoWayRound[];
}

/**
 * The legal ways past everything that bars a drive, and past what is asked by id; for each bar at least one way or the
 * reason why there is none. Neighbouring bars are passed together, and bars whose ways would overlap are one.
 * Every way has passed the check of the whole trip; of each bar's ways the one that keeps most of the drive can be driven
 * on one trip with those of the others. Where the best ways of neighbours overlap, one past all of them is told as well.
 */
export function findWaysRound(input: PastInput): WaysRound {
  const guesses = { guesses: true };
  const trip = layTrip(input, guesses);
  const quick = input.prefer === 'widest' ? layTrip({ ...input, prefer: 'quickest' }, guesses) : trip;
  const passed: Passed[] = [];
  const noWayRound: NoWayRound[] = [];
  const bars = barsOf(trip.wanted);
  for (let i = 0; i < bars.length; ) {
    const tried = firstPassed(attempts(bars, i, passed), (attempt) => {
      const before = passed.at(-1 - attempt.takesBack);
      const lowM = before === undefined ? 0 : keeping(before.ways).detour.toM;
      const highM = bars[i + attempt.takes]?.fromM ?? trip.drive.lengthM;
      return waysPast(trip, quick, attempt.bar, { lowM, highM });
    });
    const bar = bars[i] as Bar;
    i += tried.attempt?.takes ?? 1;
    if (tried.attempt === undefined) noWayRound.push(whyNot(trip, bar));
    else {
      passed.length -= tried.attempt.takesBack;
      passed.push({ bar: tried.attempt.bar, ways: tried.ways });
    }
  }
  const all = withJoint(passed, (bar, reach) => waysPast(trip, quick, bar, { ...reach, most: 1 }).ways);
  return { waysRound: all.flatMap((one) => tellPassed(trip, one)), noWayRound };
}

/** Bars to pass by one way: so many from the present one on, and so many passed before that are taken back. */
interface Attempt {
  readonly bar: Bar;
  readonly takes: number;
  readonly takesBack: number;
}

/** A bar alone; else with the next, whose place its way would need; else with those before, whose way was in its way. */
function attempts(bars: readonly Bar[], i: number, passed: readonly Passed[]): Attempt[] {
  const bar = bars[i] as Bar;
  const [next, last] = [bars[i + 1], passed.at(-1)?.bar];
  const all = [...passed.map((one) => one.bar), ...bars.slice(i)].reduce(together);
  const tries: Attempt[] = [{ bar, takes: 1, takesBack: 0 }];
  if (next !== undefined) tries.push({ bar: together(bar, next), takes: 2, takesBack: 0 });
  if (last !== undefined) tries.push({ bar: together(last, bar), takes: 1, takesBack: 1 });
  if (next !== undefined && (last !== undefined || bars.length > i + 2))
    tries.push({ bar: all, takes: bars.length - i, takesBack: passed.length });
  return tries;
}

function firstPassed(
  tries: readonly Attempt[],
  find: (attempt: Attempt) => { readonly ways: readonly JudgedWay[] },
): { readonly attempt: Attempt | undefined; readonly ways: readonly JudgedWay[] } {
  for (const attempt of tries) {
    const { ways } = find(attempt);
    if (ways.length > 0) return { attempt, ways };
  }
  return { attempt: undefined, ways: [] };
}

function tellPassed(trip: Trip, { bar, ways }: Passed): WayRound[] {
  const ids = bar.findings.map(({ id }) => id);
  return ways.map((way) => tellWay(trip, way, ids));
}
