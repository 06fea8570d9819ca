import type { Lattice } from '../lattice.ts';
import type { BestChain } from '../viterbi.ts';
import type { RoadGraph } from './graph.ts';

/** Part of a directed edge driven in one go; metres along the directed edge in its own direction. */
export interface Piece {
  readonly directed: number;
  readonly fromM: number;
  readonly toM: number;
}

/** One unbroken run along roads. */
export interface Run {
  readonly pieces: readonly Piece[];
  /** metres along the run at each of its positions */
  readonly positionM: readonly number[];
  /** first position on the run and last, both included */
  readonly first: number;
  readonly last: number;
}

/** The runs along roads of the best chain; positions between them are off the map. */
export function tracePath(chain: BestChain, lattice: Lattice, graph: RoadGraph): Run[] {
  const runs: Run[] = [];
  const last = chain.state.length - 1;
  for (let i = 0; i <= last; i++) {
    if (lattice.directed[chain.state[i]!]! < 0) continue;
    let end = i;
    while (end < last && chain.moves[end]?.kind !== 'off') end++;
    runs.push(traceRun(chain, lattice, graph, i, end));
    i = end;
  }
  return runs;
}

function traceRun(chain: BestChain, lattice: Lattice, graph: RoadGraph, first: number, last: number): Run {
  const pieces: Piece[] = [];
  const positionM: number[] = [0];
  let drivenM = 0;
  const start = chain.state[first]!;
  let directed = lattice.directed[start]!;
  let fromM = lattice.offsetM[start]!;
  let atM = fromM;

  const close = () => {
    if (atM > fromM) pieces.push({ directed, fromM, toM: atM });
  };
  /** A step back is jitter: the drive stands still until the positions have caught up. */
  const advance = (toM: number) => {
    if (toM <= atM) return;
    drivenM += toM - atM;
    atM = toM;
  };
  const enter = (next: number, offsetM: number) => {
    close();
    directed = next;
    fromM = offsetM;
    atM = offsetM;
  };
  const lengthOf = (edge: number) => graph.lengthM[edge >> 1]!;

  for (let i = first; i < last; i++) {
    const state = chain.state[i + 1]!;
    const next = lattice.directed[state]!;
    const offsetM = lattice.offsetM[state]!;
    const move = chain.moves[i];
    if (move?.kind === 'turnBack') {
      advance(lengthOf(next) - offsetM);
      enter(next, lengthOf(next) - atM);
    }
    if (move?.kind === 'roads') {
      for (const edge of [...move.edges, next]) {
        advance(lengthOf(directed));
        enter(edge, 0);
      }
    }
    advance(offsetM);
    positionM.push(drivenM);
  }
  close();
  return { pieces, positionM, first, last };
}
