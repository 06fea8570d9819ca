import { LAYERS } from '../../../geo/wayround/search/layers.ts';
import { Mover } from '../../../geo/wayround/search/mover.ts';
import type { Question } from '../../../geo/wayround/search/question.ts';

/** A move of a search: to a state in a layer, and what turning and driving that state's edge costs. */
export interface Move {
  readonly to: number;
  readonly costTenths: number;
}

/** Every move that can be made from a question's sources on, by state and layer: the turn graph as a plain graph. */
export function movesFrom(question: Question): Map<number, readonly Move[]> {
  const { graph } = question.field.costs;
  const mover = new Mover(question);
  const keys = new Set(question.sources.map(({ state, layer }) => state * LAYERS + layer));
  const moves = new Map<number, Move[]>();
  for (const key of keys) {
    const state = Math.floor(key / LAYERS);
    const out: Move[] = [];
    for (let turn = graph.turnStart[state]!; turn < graph.turnStart[state + 1]!; turn++) {
      if (!mover.make(turn, key % LAYERS, 0)) continue;
      const next = graph.turnTo[turn]!;
      const driven = question.field.costs.costTenths(graph.edgeOf[next]!);
      out.push({ to: next * LAYERS + mover.layer, costTenths: mover.turnTenths + driven });
      keys.add(next * LAYERS + mover.layer);
    }
    moves.set(key, out);
  }
  return moves;
}

/** What each place that can be come to costs from a start: Dijkstra as in a textbook, without a heap. */
export function plainDijkstra(
  moves: ReadonlyMap<number, readonly Move[]>,
  start: number,
): ReadonlyMap<number, number> {
  const done = new Map<number, number>();
  const open = new Map([[start, 0]]);
  while (open.size > 0) {
    let next = -1;
    let least = Number.POSITIVE_INFINITY;
    for (const [key, cost] of open)
      if (cost < least) {
        least = cost;
        next = key;
      }
    open.delete(next);
    done.set(next, least);
    for (const { to, costTenths } of moves.get(next) ?? []) {
      const cost = least + costTenths;
      if (!done.has(to) && cost < (open.get(to) ?? Number.POSITIVE_INFINITY)) open.set(to, cost);
    }
  }
  return done;
}
