import { type Labels, labelsFor } from './labels.ts';
import { LAYERS } from './layers.ts';
import { Mover } from './mover.ts';
import type { Found, Nothing, Question, Target } from './question.ts';

/** A limit that gives weighs more than any time on Earth. Tenths of seconds. */
const GIVE_TENTHS = 2 ** 40;
/** A bound on the work of one search. States. */
const MOST_SETTLED = 3_000_000;
const LOOK_UP_EVERY = 1024;

/** A search under way. */
interface Going {
  readonly question: Question;
  readonly labels: Labels;
  readonly mover: Mover;
  readonly targets: ReadonlyMap<number, Target>;
  best:
    | { readonly entry: number; readonly target: number; readonly rank: number; readonly gives: number }
    | undefined;
}

/**
 * The least-cost way from any source to any target: Dijkstra on states and layers, A* where the question bounds what is
 * left. Labels carry the time since the drive's start, so that what hangs on the clock is judged at the minute it is met
 * (right while leaving later never gets one there earlier).
 */
export function searchForward(question: Question): Found | Nothing {
  const { graph } = question.field.costs;
  const labels = labelsFor(graph, graph.stateCount * LAYERS, 0);
  const targets = new Map(question.targets.map((target) => [target.state, target]));
  const going: Going = { question, labels, mover: new Mover(question), targets, best: undefined };
  try {
    for (const { state, layer, costTenths, timeTenths } of question.sources) {
      const left = question.leftTenths?.(graph.head[graph.edgeOf[state]!]!) ?? 0;
      const label = { cost: costTenths, time: timeTenths, gives: 0, parent: -1 };
      labels.offer(state * LAYERS + layer, label, costTenths + left);
    }
    const settled = settleAll(going);
    return outcome(going, settled);
  } finally {
    labels.clear();
  }
}

function settleAll(going: Going): number {
  const { labels, question } = going;
  let settled = 0;
  while (labels.top() < (going.best?.rank ?? Number.POSITIVE_INFINITY) && settled < MOST_SETTLED) {
    const entry = labels.take();
    if (entry < 0) break;
    settled++;
    if (settled % LOOK_UP_EVERY === 0) question.lookUp?.();
    leave(going, entry);
  }
  return settled;
}

function leave(going: Going, entry: number): void {
  const { graph } = going.question.field.costs;
  const key = going.labels.entries.key[entry]!;
  const state = Math.floor(key / LAYERS);
  const layer = key % LAYERS;
  for (let turn = graph.turnStart[state]!; turn < graph.turnStart[state + 1]!; turn++)
    if (going.mover.make(turn, layer, going.labels.entries.time[entry]!))
      arrive(going, entry, graph.turnTo[turn]!);
  if (going.question.terms.turnAnywhere !== true) return;
  const edge = graph.edgeOf[state]!;
  if (going.mover.turnRound(edge, layer, going.labels.entries.time[entry]!)) arrive(going, entry, edge ^ 1);
}

function arrive(going: Going, parent: number, to: number): void {
  const { labels, mover, question, targets } = going;
  const { costs } = question.field;
  const { layer } = mover;
  const edge = costs.graph.edgeOf[to]!;
  const turned = labels.entries.cost[parent]! + mover.turnTenths;
  const gives = labels.entries.gives[parent]! + mover.gives;
  const target = targets.get(to);
  if (target?.layers[layer] === true) {
    const rank = turned + target.restTenths + gives * GIVE_TENTHS;
    if (going.best === undefined || rank < going.best.rank)
      going.best = { entry: parent, target: to, rank, gives };
  }
  const times = question.overlay.times.get(edge) ?? 1;
  const cost = turned + Math.ceil(costs.costTenths(edge) * times);
  const time = labels.entries.time[parent]! + mover.timeTenths + costs.timeTenths(edge);
  const left = question.leftTenths?.(costs.graph.head[edge]!) ?? 0;
  labels.offer(to * LAYERS + layer, { cost, time, gives, parent }, cost + left + gives * GIVE_TENTHS);
}

function outcome({ labels, best, question }: Going, settled: number): Found | Nothing {
  if (best === undefined) {
    const { edgeOf } = question.field.costs.graph;
    const edges = labels.entries.key
      .filter((_, entry) => labels.entries.settled[entry] === true)
      .map((key) => edgeOf[Math.floor(key / LAYERS)]!);
    return { states: undefined, reached: [...new Set(edges)], settled, gaveUp: settled >= MOST_SETTLED };
  }
  const states = labels.back(best.entry).map((key) => Math.floor(key / LAYERS));
  return {
    states: [...states.reverse(), best.target],
    costTenths: best.rank - best.gives * GIVE_TENTHS,
    gives: best.gives,
    settled,
  };
}
