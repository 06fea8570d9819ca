import { append } from '../../lists.ts';
import { type Bar, together } from './bars.ts';
import type { JudgedWay } from './judge-way.ts';
import { droppedM } from './near-way.ts';
import { MOST_WAYS } from './ways-past.ts';

/** A bar with what was found past it, best first. */
export interface Passed {
  readonly bar: Bar;
  readonly ways: readonly JudgedWay[];
}

/** Of the ways past a bar the one that keeps most of the drive. */
export function keeping(ways: readonly JudgedWay[]): JudgedWay {
  return ways.reduce((least, way) => (droppedM(way.detour) < droppedM(least.detour) ? way : least));
}

/**
 * Adds to neighbours whose best ways cannot be driven together the best one past all of them, where it takes less time
 * than those that can; it comes before them.
 */
export function withJoint(
  passed: readonly Passed[],
  search: (bar: Bar, reach: { readonly lowM: number; readonly highM: number }) => readonly JudgedWay[],
): Passed[] {
  const out: Passed[] = [];
  const runs = overlapping(passed);
  for (const [i, run] of runs.entries()) {
    const [first, ...others] = run;
    if (first === undefined) continue;
    if (others.length === 0) {
      out.push(first);
      continue;
    }
    const bar = others.reduce((all, one) => together(all, one.bar), first.bar);
    const before = runs[i - 1]?.at(-1);
    const lowM = before === undefined ? 0 : keeping(before.ways).detour.toM;
    const highM = runs[i + 1]?.[0]?.bar.fromM ?? Number.POSITIVE_INFINITY;
    const [joint] = search(bar, { lowM, highM });
    const apartS = run.reduce((sum, { ways }) => sum + keeping(ways).extraS, 0);
    const told = joint !== undefined && joint.extraS < apartS;
    if (told) out.push({ bar, ways: [joint] });
    append(out, told ? run.map(withRoom) : run);
  }
  return out;
}

/** Neighbours in runs: within one the best way past each begins before the one past its neighbour ends. */
function overlapping(passed: readonly Passed[]): Passed[][] {
  const runs: Passed[][] = [];
  let endM = Number.NEGATIVE_INFINITY;
  for (const one of passed) {
    const best = one.ways[0]?.detour;
    if (best === undefined) continue;
    if (best.fromM < endM) runs.at(-1)?.push(one);
    else runs.push([one]);
    endM = Math.max(endM, best.toM);
  }
  return runs;
}

/** One way fewer where there are as many as may be told, never the one that keeps most of the drive. */
function withRoom({ bar, ways }: Passed): Passed {
  if (ways.length < MOST_WAYS) return { bar, ways };
  const kept = keeping(ways);
  const spare = ways.findLast((way) => way !== kept);
  return { bar, ways: ways.filter((way) => way !== spare) };
}
