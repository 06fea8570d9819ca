import { type Labels, labelsFor } from './labels.ts';
import { LAYERS } from './layers.ts';
import { Mover } from './mover.ts';
import type { Found, Nothing, Question } from './question.ts';

/** A limit that gives weighs more than any time on Earth. Tenths of seconds. */
const GIVE_TENTHS = 2 ** 40;
/** A bound on the work of one search. States. */
const MOST_SETTLED = 3_000_000;
const LOOK_UP_EVERY = 1024;

/** A target come to: the entry turned from, the target's index, and what the whole way costs. */
interface Arrival {
  readonly entry: number;
  readonly target: number;
  readonly layer: number;
  readonly rank: number;
  readonly gives: number;
}

/** A search under way. */
interface Going {
  readonly question: Question;
  readonly labels: Labels;
  readonly mover: Mover;
  /** by state: indices of targets on it */
  readonly targets: ReadonlyMap<number, readonly number[]>;
  /** by target: the best arrival there */
  readonly arrivals: Map<number, Arrival>;
  leastRank: number;
}

/**
 * The least-cost way from any source to any target: Dijkstra on states and layers, A* where the question bounds what is
 * left. Labels carry the time since the drive's start, so that what hangs on the clock is judged at the minute it is met
 * (right while leaving later never gets one there earlier).
 */
export function searchForward(question: Question): Found | Nothing {
  return searching(question, (going) => {
    const settled = settleAll(going, () => going.leastRank + (question.slack?.tenths ?? 0));
    const best = chosen(going);
    return best === undefined ? nothing(going, settled) : foundAt(going, best, settled);
  });
}

/** The least-cost way to each target by itself; those that none leads to are missing. */
export function searchEach(question: Question): Found[] {
  return searching(question, (going) => {
    const settled = settleAll(going, () => dearestWanted(going));
    return [...going.arrivals.values()].map((arrival) => foundAt(going, arrival, settled));
  });
}

/** The search may end when every target has been come to for less than whatever is left. */
function dearestWanted({ arrivals, question }: Going): number {
  if (arrivals.size < question.targets.length) return Number.POSITIVE_INFINITY;
  let dearest = 0;
  for (const { rank } of arrivals.values()) dearest = Math.max(dearest, rank);
  return dearest;
}

function searching<T>(question: Question, answer: (going: Going) => T): T {
  const { graph } = question.field.costs;
  const labels = labelsFor(graph, graph.stateCount * LAYERS, 0);
  const targets = new Map<number, number[]>();
  for (const [i, { state }] of question.targets.entries())
    targets.set(state, [...(targets.get(state) ?? []), i]);
  const going: Going = {
    question,
    labels,
    mover: new Mover(question),
    targets,
    arrivals: new Map(),
    leastRank: Number.POSITIVE_INFINITY,
  };
  try {
    for (const [i, { state, layer, costTenths, timeTenths }] of question.sources.entries()) {
      const left = question.leftTenths?.(graph.head[graph.edgeOf[state]!]!) ?? 0;
      const label = { cost: costTenths, time: timeTenths, gives: 0, parent: -1 - i };
      labels.offer(state * LAYERS + layer, label, costTenths + left);
    }
    return answer(going);
  } finally {
    labels.clear();
  }
}

/** @param until nothing of this rank or more is taken up */
function settleAll(going: Going, until: () => number): number {
  const { labels, question } = going;
  let settled = 0;
  while (labels.top() < until() && settled < MOST_SETTLED) {
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
  const { entries } = going.labels;
  const key = entries.key[entry]!;
  const state = Math.floor(key / LAYERS);
  const layer = key % LAYERS;
  for (let turn = graph.turnStart[state]!; turn < graph.turnStart[state + 1]!; turn++)
    if (going.mover.make(turn, layer, entries.time[entry]!)) arrive(going, entry, graph.turnTo[turn]!);
  if (going.question.terms.turnAnywhere !== true) return;
  const edge = graph.edgeOf[state]!;
  if (going.mover.turnRound(edge, layer, entries.time[entry]!)) arrive(going, entry, edge ^ 1);
}

function arrive(going: Going, parent: number, to: number): void {
  const { labels, mover, question } = going;
  const { costs } = question.field;
  const edge = costs.graph.edgeOf[to]!;
  const turned = labels.entries.cost[parent]! + mover.turnTenths;
  const gives = labels.entries.gives[parent]! + mover.gives;
  reach(going, { entry: parent, to, turned, gives });
  const times = question.overlay.times.get(edge) ?? 1;
  const cost = turned + Math.ceil(costs.costTenths(edge) * times);
  const time = labels.entries.time[parent]! + mover.timeTenths + costs.timeTenths(edge);
  const left = question.leftTenths?.(costs.graph.head[edge]!) ?? 0;
  const rank = cost + left + gives * GIVE_TENTHS;
  labels.offer(to * LAYERS + mover.layer, { cost, time, gives, parent }, rank);
}

function reach(
  going: Going,
  {
    entry,
    to,
    turned,
    gives,
  }: { readonly entry: number; readonly to: number; readonly turned: number; readonly gives: number },
): void {
  for (const target of going.targets.get(to) ?? []) {
    const { layers, restTenths } = going.question.targets[target] as Question['targets'][number];
    if (layers[going.mover.layer] !== true) continue;
    const rank = turned + restTenths + gives * GIVE_TENTHS;
    if (rank >= (going.arrivals.get(target)?.rank ?? Number.POSITIVE_INFINITY)) continue;
    going.arrivals.set(target, { entry, target, layer: going.mover.layer, rank, gives });
    going.leastRank = Math.min(going.leastRank, rank);
  }
}

/** Of the arrivals hardly dearer than the best, the one that loses least; the best where nothing tells them apart. */
function chosen({ arrivals, question, labels, leastRank }: Going): Arrival | undefined {
  const { slack } = question;
  const near = [...arrivals.values()].filter(({ rank }) => rank <= leastRank + (slack?.tenths ?? 0));
  if (slack === undefined) return near[0];
  const lost = ({ entry, target }: Arrival) => slack.lost(labels.sourceOf(entry), target);
  return near.sort((a, b) => lost(a) - lost(b) || a.rank - b.rank)[0];
}

function nothing({ labels, question }: Going, settled: number): Nothing {
  const { edgeOf } = question.field.costs.graph;
  const edges = labels.entries.key
    .filter((_, entry) => labels.entries.settled[entry] === true)
    .map((key) => edgeOf[Math.floor(key / LAYERS)]!);
  return { states: undefined, reached: [...new Set(edges)], settled, gaveUp: settled >= MOST_SETTLED };
}

function foundAt({ labels, question }: Going, best: Arrival, settled: number): Found {
  const states = labels.back(best.entry).map((key) => Math.floor(key / LAYERS));
  const target = question.targets[best.target] as Question['targets'][number];
  return {
    states: [...states.reverse(), target.state],
    source: labels.sourceOf(best.entry),
    target: best.target,
    layer: best.layer,
    costTenths: best.rank - best.gives * GIVE_TENTHS,
    gives: best.gives,
    settled,
  };
}
