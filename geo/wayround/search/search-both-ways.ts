import { itemAt } from '../../lists.ts';
import { type Labels, labelsFor } from './labels.ts';
import { fits, LAYERS, NO_LAYER } from './layers.ts';
import { Mover } from './mover.ts';
import type { Found, Nothing, Question } from './question.ts';
import { searchForward } from './search-forward.ts';

const MOST_SETTLED = 3_000_000;
const LOOK_UP_EVERY = 1024;

/** A search from both ends under way. */
interface Going {
  readonly question: Question;
  readonly mover: Mover;
  readonly fore: Labels;
  readonly back: Labels;
  /** averaged potential at the end of an edge, tenths: what the forward side adds and the backward side takes off */
  readonly pull: (node: number) => number;
  /** the best meeting so far: entries of both sides that stand for one state */
  best: { readonly cost: number; readonly fore: number; readonly back: number } | undefined;
}

/**
 * The same answer as `searchForward` from both ends at once, for questions that no clock and no giving limit is part of.
 * Both sides use one averaged potential with opposite signs (Ikeda et al. 1994), so the search may stop when the tops of
 * both queues together reach the best meeting, and not before: at the first meeting it would often be wrong.
 * A state met counts once: the forward label has its edge driven, the backward label begins at its end.
 *
 * @param doneTenths a lower bound on the way from the sources to the end of an edge
 */
export function searchBothWays(question: Question, doneTenths: (node: number) => number): Found | Nothing {
  const { terms, field } = question;
  if (terms.clockAt !== undefined || terms.limitsGive === true || terms.turnAnywhere === true)
    return searchForward(question);
  const { graph } = field.costs;
  const left = question.leftTenths ?? (() => 0);
  const keys = graph.stateCount * LAYERS;
  const going: Going = {
    question,
    mover: new Mover(question),
    fore: labelsFor(graph, keys, 0),
    back: labelsFor(graph, keys, 1),
    // halved and rounded as a whole, so that both sides use the very same number
    pull: (node) => Math.round((left(node) - doneTenths(node)) / 2),
    best: undefined,
  };
  try {
    begin(going);
    const settled = settleAll(going);
    return outcome(going, settled);
  } finally {
    going.fore.clear();
    going.back.clear();
  }
}

function begin(going: Going): void {
  const { question, fore, mover } = going;
  const { graph } = question.field.costs;
  for (const [i, { state, layer, costTenths, timeTenths }] of question.sources.entries()) {
    const rank = costTenths + going.pull(graph.head[graph.edgeOf[state]!]!);
    fore.offer(
      state * LAYERS + layer,
      { cost: costTenths, time: timeTenths, gives: 0, parent: -1 - i },
      rank,
    );
  }
  for (const [target, { state, layers, restTenths }] of question.targets.entries())
    for (let into = graph.inStart[state]!; into < graph.inStart[state + 1]!; into++) {
      const turn = graph.inTurn[into]!;
      for (let layer = 0; layer < LAYERS; layer++) {
        const from = graph.turnFrom[turn]!;
        if (!stands(going, from, layer) || !mover.make(turn, layer, 0) || layers[mover.layer] !== true)
          continue;
        // behind, a label's time holds the index of the target it leads to
        offerBack(going, from, layer, {
          cost: mover.turnTenths + restTenths,
          time: target,
          gives: 0,
          parent: -1,
        });
      }
    }
}

function stands({ question }: Going, state: number, layer: number): boolean {
  const { costs } = question.field;
  const { ground } = costs.kind(costs.graph.edgeOf[state]!);
  return fits(layer, ground);
}

function offerBack(going: Going, state: number, layer: number, label: Parameters<Labels['offer']>[1]): void {
  const { graph } = going.question.field.costs;
  const key = state * LAYERS + layer;
  going.back.offer(key, label, label.cost - going.pull(graph.head[graph.edgeOf[state]!]!));
  const fore = going.fore.at(key);
  if (fore >= 0) meet(going, fore, going.back.at(key));
}

function meet(going: Going, fore: number, back: number): void {
  const cost = going.fore.entries.cost[fore]! + going.back.entries.cost[back]!;
  if (going.best === undefined || cost < going.best.cost) going.best = { cost, fore, back };
}

function settleAll(going: Going): number {
  const { fore, back, question } = going;
  let settled = 0;
  for (const { state, layer } of question.sources) {
    const known = back.at(state * LAYERS + layer);
    if (known >= 0) meet(going, fore.at(state * LAYERS + layer), known);
  }
  while (settled < MOST_SETTLED) {
    const [ahead, behind] = [fore.top(), back.top()];
    // one tenth less, since the rounded potential may be off by half a tenth at either end
    if (ahead + behind - 1 >= (going.best?.cost ?? Number.POSITIVE_INFINITY)) break;
    if (ahead === Number.POSITIVE_INFINITY || behind === Number.POSITIVE_INFINITY) break;
    settled++;
    if (settled % LOOK_UP_EVERY === 0) question.lookUp?.();
    if (fore.waiting() <= back.waiting()) leave(going);
    else comeFrom(going);
  }
  return settled;
}

function leave(going: Going): void {
  const { question, fore, back, mover } = going;
  const { costs } = question.field;
  const { graph } = costs;
  const entry = fore.take();
  if (entry < 0) return;
  const key = fore.entries.key[entry]!;
  const state = Math.floor(key / LAYERS);
  for (let turn = graph.turnStart[state]!; turn < graph.turnStart[state + 1]!; turn++) {
    if (!mover.make(turn, key % LAYERS, fore.entries.time[entry]!)) continue;
    const to = graph.turnTo[turn]!;
    const edge = graph.edgeOf[to]!;
    const cost = fore.entries.cost[entry]! + mover.turnTenths + edgeTenths(question, edge);
    const time = fore.entries.time[entry]! + mover.timeTenths + costs.timeTenths(edge);
    const next = to * LAYERS + mover.layer;
    fore.offer(next, { cost, time, gives: 0, parent: entry }, cost + going.pull(graph.head[edge]!));
    if (back.at(next) >= 0) meet(going, fore.at(next), back.at(next));
  }
}

function comeFrom(going: Going): void {
  const { question, back, mover } = going;
  const { graph } = question.field.costs;
  const entry = back.take();
  if (entry < 0) return;
  const key = back.entries.key[entry]!;
  const state = Math.floor(key / LAYERS);
  const cost = back.entries.cost[entry]! + edgeTenths(question, graph.edgeOf[state]!);
  for (let into = graph.inStart[state]!; into < graph.inStart[state + 1]!; into++) {
    const turn = graph.inTurn[into]!;
    const from = graph.turnFrom[turn]!;
    for (let layer = 0; layer < LAYERS; layer++) {
      if (!stands(going, from, layer) || !mover.make(turn, layer, 0) || mover.layer !== key % LAYERS)
        continue;
      offerBack(going, from, layer, {
        cost: cost + mover.turnTenths,
        time: back.entries.time[entry]!,
        gives: 0,
        parent: entry,
      });
    }
  }
}

function edgeTenths({ field, overlay }: Question, edge: number): number {
  return Math.ceil(field.costs.costTenths(edge) * (overlay.times.get(edge) ?? 1));
}

function outcome({ best, fore, back, question }: Going, settled: number): Found | Nothing {
  const { edgeOf } = question.field.costs.graph;
  const stateOf = (key: number) => Math.floor(key / LAYERS);
  if (best === undefined) {
    const edges = fore.entries.key
      .filter((_, entry) => fore.entries.settled[entry] === true)
      .map((key) => edgeOf[stateOf(key)]!);
    return { states: undefined, reached: [...new Set(edges)], settled, gaveUp: settled >= MOST_SETTLED };
  }
  const before = fore.back(best.fore).map(stateOf).reverse();
  const after = back.back(best.back).map(stateOf).slice(1);
  const target = back.entries.time[best.back]!;
  return {
    states: [...before, ...after, itemAt(question.targets, target).state],
    source: fore.sourceOf(best.fore),
    target,
    layer: NO_LAYER,
    costTenths: best.cost,
    gives: 0,
    settled,
  };
}
