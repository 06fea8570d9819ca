import type { RoadGraph } from '../../graph/road-graph.ts';
import type { BestChain, Move } from './best-chain.ts';
import type { Lattice } from './lattice.ts';

/** Part of a directed edge driven in one go; metres along the directed edge in its own direction. */
export interface EdgePart {
  readonly directed: number;
  readonly fromM: number;
  readonly toM: number;
}

/** What is driven along roads without a break. */
export interface Path {
  readonly parts: readonly EdgePart[];
  /** metres along the path at each of its positions */
  readonly positionM: readonly number[];
  /** first position on the path and last, both included */
  readonly first: number;
  readonly last: number;
}

/** The paths along roads of the best chain; positions between them are off the map. */
export function tracePaths(chain: BestChain, lattice: Lattice, graph: RoadGraph): Path[] {
  const paths: Path[] = [];
  const last = chain.state.length - 1;
  for (let i = 0; i <= last; i++) {
    if (lattice.directed[chain.state[i]!]! < 0) continue;
    let end = i;
    while (end < last && chain.moves[end]?.kind !== 'off') end++;
    paths.push(tracePath(chain, lattice, graph, i, end));
    i = end;
  }
  return paths;
}

/** Where a path has come to. */
interface Trace {
  readonly graph: RoadGraph;
  readonly parts: EdgePart[];
  drivenM: number;
  directed: number;
  /** where it came onto the directed edge, and how far it is along it */
  fromM: number;
  atM: number;
}

function tracePath(chain: BestChain, lattice: Lattice, graph: RoadGraph, first: number, last: number): Path {
  const start = chain.state[first]!;
  const offsetM = lattice.offsetM[start]!;
  const directed = lattice.directed[start]!;
  const trace: Trace = { graph, parts: [], drivenM: 0, directed, fromM: offsetM, atM: offsetM };
  const positionM = [0];
  for (let i = first; i < last; i++) {
    const state = chain.state[i + 1]!;
    follow(trace, chain.moves[i]!, lattice.directed[state]!, lattice.offsetM[state]!);
    advance(trace, lattice.offsetM[state]!);
    positionM.push(trace.drivenM);
  }
  closePart(trace);
  return { parts: trace.parts, positionM, first, last };
}

/** Onto the directed edge `next`; when turning back on it, past the place `offsetM` along it first. */
function follow(trace: Trace, move: Move, next: number, offsetM: number): void {
  const lengthOf = (directed: number) => trace.graph.lengthM[directed >> 1]!;
  if (move.kind === 'turnBack') {
    advance(trace, lengthOf(next) - offsetM);
    enter(trace, next, lengthOf(next) - trace.atM);
    return;
  }
  if (move.kind !== 'roads') return;
  for (const directed of [...move.edges, next]) {
    advance(trace, lengthOf(trace.directed));
    enter(trace, directed, 0);
  }
}

/** A step back is jitter: the drive stands still until the positions have caught up. */
function advance(trace: Trace, toM: number): void {
  if (toM <= trace.atM) return;
  trace.drivenM += toM - trace.atM;
  trace.atM = toM;
}

function enter(trace: Trace, directed: number, offsetM: number): void {
  closePart(trace);
  trace.directed = directed;
  trace.fromM = offsetM;
  trace.atM = offsetM;
}

function closePart({ parts, directed, fromM, atM }: Trace): void {
  if (atM > fromM) parts.push({ directed, fromM, toM: atM });
}
