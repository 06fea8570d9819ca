import type { Span } from '../../drive.ts';
import type { BestChain } from '../best-chain.ts';
import type { Matching } from '../lattice.ts';
import type { MatchSettings } from '../match-settings.ts';
import { type Explored, edgeCostM } from './explore-gap.ts';

/**
 * Another way may be meant while it costs no more than this share beyond the piece it would stand for, and a little.
 * By measurement: on the Seattle field test thinned to 1 km all of the wrong pieces are then marked.
 */
const NEARLY = 1;
/** Seven seconds told in metres at full speed; in metres of road, a corner cut. */
const A_LITTLE_M = { quickest: 200, shortest: 50 };
/** Roads this much farther from a point are as near. */
const AS_NEAR_M = 3;

/** The pieces of a fill in whose stead another way is nearly as quick. */
export function othersBetween(matching: Matching, explored: Explored): Span[] {
  const { fill, ahead, behind, left, joined, atM, atCostM } = explored;
  const own = new Set(fill.edges);
  const best = atCostM.at(-1)!;
  // by the edge where the fill is left: the farthest one where it is joined again
  const farthest = new Map<number, number>();
  ahead.directed.forEach((directed, entry) => {
    const back = behind.indexOf.get(directed ^ 1);
    if (back === undefined || own.has(directed)) return;
    const from = left[entry]! + 1;
    const to = joined[back]!;
    if (to <= (farthest.get(from) ?? from)) return;
    const cost = ahead.costM[entry]! + edgeCostM(matching, directed) + behind.costM[back]!;
    if (cost - best <= nearlyM(matching.settings, atCostM[to]! - atCostM[from]!)) farthest.set(from, to);
  });
  return [...farthest].map(([from, to]) => ({ fromM: atM[from]!, toM: atM[to]! }));
}

/**
 * The pieces before and after position i in whose stead the drive may pass it otherwise, as in the other direction:
 * what a point on a road does not tell.
 */
export function othersThrough(
  matching: Matching,
  chain: BestChain,
  i: number,
  [before, after]: readonly [Explored, Explored],
): Span[] {
  const { lattice } = matching;
  const chosen = chain.state[i]!;
  const best = before.atCostM.at(-1)! + after.atCostM.at(-1)!;
  const spans: Span[] = [];
  for (let state = lattice.pointStart[i]!; state < lattice.pointStart[i + 1]!; state++) {
    const directed = lattice.directed[state]!;
    if (directed < 0 || lattice.distanceM[state]! > lattice.distanceM[chosen]! + AS_NEAR_M) continue;
    const there = before.ahead.indexOf.get(directed);
    const back = after.behind.indexOf.get(directed ^ 1);
    if (state === chosen || there === undefined || back === undefined) continue;
    const from = before.left[there]! + 1;
    const to = after.joined[back]!;
    const cost = before.ahead.costM[there]! + edgeCostM(matching, directed) + after.behind.costM[back]!;
    const skipped = before.atCostM.at(-1)! - before.atCostM[from]! + after.atCostM[to]!;
    if (cost - best <= nearlyM(matching.settings, skipped))
      spans.push({ fromM: before.atM[from]!, toM: after.atM[to]! });
  }
  return spans;
}

/** What another way may cost more than a piece of `insteadOfM`. */
export function nearlyM({ quickest }: MatchSettings, insteadOfM: number): number {
  return NEARLY * insteadOfM + (quickest ? A_LITTLE_M.quickest : A_LITTLE_M.shortest);
}
