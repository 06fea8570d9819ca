import type { StepCosts } from '../settings.ts';
import type { RoadGraph } from './graph.ts';
import { createHeap } from './heap.ts';

/** Where a search starts: at the head of a directed edge. */
export interface Seed {
  readonly directed: number;
  /** what it took to get there */
  readonly costM: number;
  readonly metres: number;
}

/** The directed edges a search came to, each with the best way to its tail. */
export interface Reached {
  /** from directed edge to its place in the lists below */
  readonly indexOf: ReadonlyMap<number, number>;
  readonly directed: readonly number[];
  /** true metres to the edge's tail, the seed's metres included */
  readonly metres: readonly number[];
  /** the same with the guiding extras */
  readonly costM: readonly number[];
  /** place of the edge before; `-1 - seed` when a seed comes before */
  readonly parent: readonly number[];
}

export interface SearchBounds {
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
}

const MOST_SETTLED = 400_000;

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
  const { head, out, outStart, lengthM, forbidden } = graph;
  const extraM =
    bounds.extraM ?? ((directed: number) => lengthM[directed >> 1]! * extraPerM(graph, steps, directed));
  const remainingM = bounds.remainingM;
  const placeOf = scratchOf(graph);
  const directed: number[] = [];
  const metres: number[] = [];
  const costM: number[] = [];
  const parent: number[] = [];
  const settled: boolean[] = [];
  const heap = createHeap();
  let limitM = bounds.limitM;

  function leave(from: number, at: number, cost: number, soFar: number): void {
    const node = head[from]!;
    const onward = remainingM === undefined ? 0 : remainingM(node);
    if (cost + onward > limitM) return;
    const barred = forbidden.get(from);
    for (let i = outStart[node]!; i < outStart[node + 1]!; i++) {
      const next = out[i]!;
      if (next === (from ^ 1) && at >= 0 && bounds.turnBackAtStartOnly === true) continue;
      let total =
        cost + (next === (from ^ 1) ? turnBackM(graph, steps, from) : enterM(graph, steps, from, next));
      if (barred?.get(next)?.always === true) total += steps.forbiddenTurnM;
      if (total + onward > limitM) continue;
      const known = placeOf[next]!;
      if (known < 0) {
        placeOf[next] = directed.length;
        heap.push(total + onward, directed.length);
        directed.push(next);
        metres.push(soFar);
        costM.push(total);
        parent.push(at);
        settled.push(false);
      } else if (total < costM[known]!) {
        metres[known] = soFar;
        costM[known] = total;
        parent[known] = at;
        settled[known] = false;
        heap.push(total + onward, known);
      }
    }
  }

  seeds.forEach((seed, i) => {
    leave(seed.directed, -1 - i, seed.costM, seed.metres);
  });
  let open = bounds.targets?.size ?? -1;
  let count = 0;
  while (heap.size() > 0) {
    const key = heap.peekKey();
    if (key > limitM || count > MOST_SETTLED) break;
    const at = heap.pop();
    if (settled[at] === true) continue;
    settled[at] = true;
    count++;
    const edge = directed[at]!;
    const offsetM = bounds.targets?.get(edge);
    if (offsetM !== undefined) {
      open--;
      if (open === 0) break;
      if (bounds.slackM !== undefined) limitM = Math.min(limitM, costM[at]! + offsetM + bounds.slackM);
    }
    const length = lengthM[edge >> 1]!;
    leave(edge, at, costM[at]! + length + extraM(edge), metres[at]! + length);
  }
  const indexOf = new Map<number, number>();
  directed.forEach((edge, at) => {
    indexOf.set(edge, at);
    placeOf[edge] = -1;
  });
  return { indexOf, directed, metres, costM, parent };
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

/** Extra cost of turning round on a directed edge. */
export function turnBackM(graph: RoadGraph, steps: StepCosts, from: number): number {
  return steps.turnBackM + enterM(graph, steps, from, from ^ 1);
}

function enterM(graph: RoadGraph, steps: StepCosts, from: number, next: number): number {
  return graph.wrongWay[next] === 1 && graph.wrongWay[from] === 0 ? steps.enterWrongWayM : 0;
}

/** Extra cost per metre of driving a directed edge. */
export function extraPerM(graph: RoadGraph, steps: StepCosts, directed: number): number {
  const ofClass = steps.classPerM[graph.roadClass[directed >> 1]!] ?? 0;
  return graph.wrongWay[directed] === 1 ? ofClass + steps.wrongWayPerM : ofClass;
}

/** The directed edges driven before the one at `place`, in driving order, and the seed they start from. */
export function wayTo(reached: Reached, place: number): { edges: number[]; seed: number } {
  const edges: number[] = [];
  let at = reached.parent[place]!;
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
