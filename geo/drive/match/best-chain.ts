import { createRows, wayTo } from '../../graph/search-roads.ts';
import { behindBest, createCosts, leastOf, MOVE } from './chain-costs.ts';
import { type ChainWork, END_OFF, stepBetween } from './chain-step.ts';
import { LEAD, type Matching } from './lattice.ts';
import { linkFar } from './link-far.ts';
import { linkNear } from './link-near.ts';
import { linkOff } from './link-off.ts';

/** How the drive gets from one position's state to the next one's. */
export type Move =
  /** along roads: the directed edges wholly driven between the two states' own edges */
  | { readonly kind: 'roads'; readonly edges: readonly number[] }
  /** on along the same directed edge (a small step back stands still) */
  | { readonly kind: 'same' }
  /** turning round on the same edge */
  | { readonly kind: 'turnBack' }
  /** not along mapped roads */
  | { readonly kind: 'off' };

export interface BestChain {
  /** chosen state of every position */
  readonly state: readonly number[];
  /** moves[i] leads from position i to i + 1 */
  readonly moves: readonly Move[];
  /**
   * By state: how much likelier the best chain is than the best chain through that state, nats. 0 on the chain;
   * right up to CLOSE, beyond it no more than that it is beyond.
   */
  readonly behind: Float64Array;
}

/**
 * The likeliest chain of states (Viterbi), and by a second sweep backwards how far every other state is behind it.
 *
 * A break (leaving the roads between two positions) costs as much as a detour of `detourM`. It bounds every step:
 * a state that is behind the best by more than a break can never win, so searches stay short.
 */
export function findBestChain(matching: Matching): BestChain {
  const { lattice, graph, settings } = matching;
  const work: ChainWork = {
    ...matching,
    costs: createCosts(lattice),
    rowOf: createRows(graph, settings.steps),
  };
  begin(work);
  for (let i = 0; i + 1 < lattice.points; i++) {
    settings.lookUp?.();
    const step = stepBetween(work, i);
    if (step.straightM > settings.farM) linkFar(work, step);
    else linkNear(work, step);
    linkOff(work, step);
  }
  return traceBack(work);
}

/** The first position's states: on a road, or not yet on one. */
function begin({ lattice, costs }: ChainWork): void {
  for (let state = 0; state < (lattice.pointStart[1] ?? 0); state++) {
    const at = lattice.directed[state]!;
    if (at >= 0) costs.cost[state] = costs.emission[state]!;
    if (at === LEAD) costs.cost[state] = costs.emission[state]! + END_OFF;
  }
}

function traceBack(work: ChainWork): BestChain {
  const { costs } = work;
  const { points, pointStart, gapM } = work.lattice;
  const state: number[] = [];
  const moves: Move[] = [];
  const last = pointStart[points - 1]!;
  let at = leastOf(costs, last, pointStart[points]!);
  const total = costs.cost[at]!;
  for (let i = points - 1; i > 0; i--) {
    state.push(at);
    moves.push(moveTo(work, at, gapM[i - 1]!));
    at = costs.back[at]!;
  }
  state.push(at);
  return { state: state.reverse(), moves: moves.reverse(), behind: behindBest(costs, last, total) };
}

/** The move that leads to a state on the likeliest chain up to it. */
function moveTo({ costs, lattice, settings, rowOf }: ChainWork, to: number, straightM: number): Move {
  const { back, how, fills } = costs;
  if (how[to] === MOVE.off) return { kind: 'off' };
  if (how[to] === MOVE.same) return { kind: 'same' };
  if (how[to] === MOVE.turnBack) return { kind: 'turnBack' };
  const known = straightM > settings.farM ? fills.get(to) : undefined;
  if (known !== undefined) return { kind: 'roads', edges: known };
  const row = rowOf(lattice.directed[back[to]!]!, 0);
  return { kind: 'roads', edges: wayTo(row, row.indexOf.get(lattice.directed[to]!)!).edges };
}
