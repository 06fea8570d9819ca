import { fits, LAYERS } from './layers.ts';
import { Mover } from './mover.ts';
import type { Question } from './question.ts';

const LOOK_UP_EVERY = 1024;

/** Directed edges from whose end some target can be reached, targets' own included. */
export function reachBack(question: Question): Set<number> {
  const { costs } = question.field;
  const { graph } = costs;
  const mover = new Mover(question);
  const seen = new Set<number>();
  const edges = new Set(question.targets.map(({ state }) => graph.edgeOf[state]!));
  const open: { readonly state: number; readonly takes: readonly boolean[] }[] = question.targets.map(
    ({ state, layers }) => ({ state, takes: layers }),
  );
  let count = 0;
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (++count % LOOK_UP_EVERY === 0) question.lookUp?.();
    for (let into = graph.inStart[next.state]!; into < graph.inStart[next.state + 1]!; into++) {
      const turn = graph.inTurn[into]!;
      const from = graph.turnFrom[turn]!;
      const { ground } = costs.kind(graph.edgeOf[from]!);
      for (let layer = 0; layer < LAYERS; layer++) {
        const key = from * LAYERS + layer;
        if (seen.has(key) || !fits(layer, ground)) continue;
        if (!mover.make(turn, layer, 0) || next.takes[mover.layer] !== true) continue;
        seen.add(key);
        edges.add(graph.edgeOf[from]!);
        open.push({ state: from, takes: Array.from({ length: LAYERS }, (_, i) => i === layer) });
      }
    }
  }
  return edges;
}
