import { createHeap, type Heap, popFrom, pushTo } from './heap.ts';
import type { RoadGraph } from './road-graph.ts';
import { extraPerM, type StepCosts, turnM } from './step-costs.ts';

/** Where a search starts: at the head of a directed edge. */
export interface Seed {
  readonly directed: number;
  /** what it took to get there */
  readonly costM: number;
  readonly metres: number;
}

/** The directed edges a search came to, each with the best way to its tail. */
export interface Reached {
  /** from directed edge to its entry in the lists below */
  readonly indexOf: ReadonlyMap<number, number>;
  readonly directed: readonly number[];
  /** true metres to the edge's tail, the seed's metres included */
  readonly metres: readonly number[];
  /** the same with the guiding extras */
  readonly costM: readonly number[];
  /** entry of the edge before; `-1 - seed` when a seed comes before */
  readonly parent: readonly number[];
}

interface SearchBounds {
  /** nothing costlier is looked at */
  readonly limitM: number;
  /** turning round is looked at where the search starts only: enough where positions lie close */
  readonly turnBackAtStartOnly?: boolean;
  /** a lower bound on the way from a node to the goal, for long searches */
  readonly remainingM?: (node: number) => number;
  /** stop when all of these edges are settled, or when the rest costs `slackM` more than driving `offsetM` into the first */
  readonly targets?: ReadonlyMap<number, number>;
  readonly slackM?: number;
  /** what driving a whole directed edge costs beyond its length; by default from the step costs */
  readonly extraM?: (directed: number) => number;
  /** what going from one directed edge into the next costs; by default from the step costs */
  readonly turnM?: (from: number, next: number) => number;
}

const MOST_SETTLED = 400_000;

/** A search at work: the lists of Reached as they grow. */
interface Search {
  readonly graph: RoadGraph;
  readonly steps: StepCosts;
  readonly bounds: SearchBounds;
  readonly turnM: (from: number, next: number) => number;
  /** by directed edge: its entry, -1 while it has none */
  readonly entryOf: Int32Array;
  readonly directed: number[];
  readonly metres: number[];
  readonly costM: number[];
  readonly parent: number[];
  readonly settled: boolean[];
  readonly heap: Heap;
  limitM: number;
}

/**
 * Least-cost ways from the seeds along directed edges (Dijkstra on edges, so that turns can cost; A* with
 * `remainingM`). Touches nothing but the edges it comes to.
 */
export function searchRoads(
  graph: RoadGraph,
  steps: StepCosts,
  seeds: readonly Seed[],
  bounds: SearchBounds,
): Reached {
  const search: Search = {
    graph,
    steps,
    bounds,
    turnM: bounds.turnM ?? ((from, next) => turnM(graph, steps, from, next)),
    entryOf: scratchOf(graph),
    directed: [],
    metres: [],
    costM: [],
    parent: [],
    settled: [],
    heap: createHeap(),
    limitM: bounds.limitM,
  };
  seeds.forEach((seed, i) => {
    leave(search, seed.directed, -1 - i, seed.costM, seed.metres);
  });
  settleAll(search);
  const { directed, metres, costM, parent, entryOf } = search;
  const indexOf = new Map<number, number>();
  directed.forEach((edge, at) => {
    indexOf.set(edge, at);
    entryOf[edge] = -1;
  });
  return { indexOf, directed, metres, costM, parent };
}

function settleAll(search: Search): void {
  const { graph, steps, bounds, heap, directed, metres, costM, settled } = search;
  const { targets, slackM } = bounds;
  const { lengthM } = graph;
  const extraM = bounds.extraM ?? ((edge: number) => lengthM[edge >> 1]! * extraPerM(graph, steps, edge));
  let open = targets?.size ?? -1;
  let count = 0;
  while (heap.keys.length > 0) {
    if (heap.keys[0]! > search.limitM || count > MOST_SETTLED) return;
    const at = popFrom(heap);
    if (settled[at] === true) continue;
    settled[at] = true;
    count++;
    const edge = directed[at]!;
    const offsetM = targets?.get(edge);
    if (offsetM !== undefined) {
      open--;
      if (open === 0) return;
      if (slackM !== undefined) search.limitM = Math.min(search.limitM, costM[at]! + offsetM + slackM);
    }
    const length = lengthM[edge >> 1]!;
    leave(search, edge, at, costM[at]! + length + extraM(edge), metres[at]! + length);
  }
}

/** Looks at every edge on from the head of `from`, which is entry `at` and was come to with cost and metres. */
function leave(search: Search, from: number, at: number, cost: number, soFar: number): void {
  const { graph, bounds, entryOf, limitM } = search;
  const { out, outStart } = graph;
  const node = graph.head[from]!;
  const onward = bounds.remainingM === undefined ? 0 : bounds.remainingM(node);
  if (cost + onward > limitM) return;
  for (let i = outStart[node]!; i < outStart[node + 1]!; i++) {
    const next = out[i]!;
    const turnsBack = next === (from ^ 1);
    if (turnsBack && at >= 0 && bounds.turnBackAtStartOnly === true) continue;
    const total = cost + search.turnM(from, next);
    if (total + onward > limitM) continue;
    const known = entryOf[next]!;
    if (known >= 0 && total >= search.costM[known]!) continue;
    const entry = known >= 0 ? known : search.directed.length;
    entryOf[next] = entry;
    search.directed[entry] = next;
    search.metres[entry] = soFar;
    search.costM[entry] = total;
    search.parent[entry] = at;
    search.settled[entry] = false;
    pushTo(search.heap, total + onward, entry);
  }
}

const scratch = new WeakMap<RoadGraph, Int32Array>();

/** One lasting table by directed edge, all -1 between searches, so that a search costs nothing for the map's size. */
function scratchOf(graph: RoadGraph): Int32Array {
  const known = scratch.get(graph);
  if (known !== undefined) return known;
  const table = new Int32Array(2 * graph.edgeCount).fill(-1);
  scratch.set(graph, table);
  return table;
}

/** The directed edges driven before the one of an entry, in driving order, and the seed they start from. */
export function wayTo(reached: Reached, entry: number): { edges: number[]; seed: number } {
  const edges: number[] = [];
  let at = reached.parent[entry]!;
  while (at >= 0) {
    edges.push(reached.directed[at]!);
    at = reached.parent[at]!;
  }
  return { edges: edges.reverse(), seed: -1 - at };
}

/** Searches from single edges, each done once and widened when a farther limit is asked for. */
export function createRows(
  graph: RoadGraph,
  steps: StepCosts,
): (directed: number, limitM: number) => Reached {
  const rows = new Map<number, { limitM: number; reached: Reached }>();
  return (directed, limitM) => {
    const known = rows.get(directed);
    if (known !== undefined && known.limitM >= limitM) return known.reached;
    // in round figures, so that limits a little greater do not search again each time
    const wide = Math.ceil(limitM / 50) * 50;
    const reached = searchRoads(graph, steps, [{ directed, costM: 0, metres: 0 }], {
      limitM: wide,
      turnBackAtStartOnly: true,
    });
    rows.set(directed, { limitM: wide, reached });
    return reached;
  };
}
