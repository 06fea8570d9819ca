import type { BestChain } from '../best-chain.ts';
import type { Matching } from '../lattice.ts';

/** What is driven between two positions: from a place on the first directed edge to one on the last. */
export interface Fill {
  /** directed edges in driving order, both ends' own included */
  readonly edges: readonly number[];
  /** metres along the first edge and along the last */
  readonly fromM: number;
  readonly toM: number;
}

/** What is driven from position i to the next, when that is more than one edge. */
export function fillAfter({ lattice }: Matching, chain: BestChain, i: number): Fill | undefined {
  const move = chain.moves[i];
  if (move?.kind !== 'roads') return undefined;
  const from = chain.state[i]!;
  const to = chain.state[i + 1]!;
  const edges = [lattice.directed[from]!, ...move.edges, lattice.directed[to]!];
  return { edges, fromM: lattice.offsetM[from]!, toM: lattice.offsetM[to]! };
}
