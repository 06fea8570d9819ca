import { distanceM, type Place } from '../../../earth/sphere.ts';
import { placeOnEdge } from '../../../graph/place-on-edge.ts';
import { type Reached, type Seed, searchRoads } from '../../../graph/search-roads.ts';
import type { Matching } from '../lattice.ts';
import type { Fill } from './fill.ts';

/** Ways from the start of a fill and to its end, as far as they may be part of another way driven instead. */
export interface Explored {
  readonly fill: Fill;
  /** metres along the path at the start of each edge of the fill, and at its end */
  readonly atM: readonly number[];
  /** cost from the fill's start to the same places */
  readonly atCostM: readonly number[];
  /** least-cost ways onward from the start; by entry, the last edge of the fill on the way there, -1 for none */
  readonly ahead: Reached;
  readonly left: readonly number[];
  /** least-cost ways on to the end, found from there backwards, so of edges turned round; by entry, the first edge of the fill on the way on, or the count of them */
  readonly behind: Reached;
  readonly joined: readonly number[];
}

/** How a fill is looked into. */
interface Ask {
  /** metres along the path where it starts */
  readonly startM: number;
  /** at the ends of a drive nothing tells which way round the road is entered or left */
  readonly open: { readonly start: boolean; readonly end: boolean };
  /** dearer ways are not looked at, by the fill's own cost */
  readonly limitM: (costM: number) => number;
}

/** Cost of driving a directed edge whole, or as many metres of it. */
export function edgeCostM(
  { graph, prices }: Matching,
  directed: number,
  metres = graph.lengthM[directed >> 1]!,
): number {
  return metres * (1 + prices.extraPerM(directed));
}

/** Searches from both ends of a fill by the prices it was found with. */
export function exploreGap(matching: Matching, fill: Fill, { startM, open, limitM }: Ask): Explored {
  const { graph, roads } = matching;
  const { edges, fromM, toM } = fill;
  const first = edges[0]!;
  const last = edges.at(-1)!;
  const along = measure(matching, fill, startM);
  const limit = limitM(along.atCostM.at(-1)!);
  const restM = graph.lengthM[first >> 1]! - fromM;
  const starts = [seedOn(matching, first, restM)];
  if (open.start) starts.push(seedOn(matching, first ^ 1, fromM));
  const ends = [seedOn(matching, last, toM, last ^ 1)];
  if (open.end) ends.push(seedOn(matching, last ^ 1, graph.lengthM[last >> 1]! - toM, last));
  const goal = placeOnEdge(roads, graph, last, toM);
  const ahead = search(matching, starts, goal, limit, { backwards: false });
  const source = placeOnEdge(roads, graph, first, fromM);
  const behind = search(matching, ends, source, limit, { backwards: true });
  const rank = new Map(edges.map((directed, k) => [directed, k]));
  const startRanks = open.start ? [0, -1] : [0];
  const endRanks = open.end ? [edges.length - 1, edges.length] : [edges.length - 1];
  return {
    fill,
    ...along,
    ahead,
    left: lastRanks(ahead, startRanks, (directed) => rank.get(directed)),
    behind,
    joined: lastRanks(behind, endRanks, (directed) => rank.get(directed ^ 1)),
  };
}

function measure(matching: Matching, { edges, fromM, toM }: Fill, startM: number) {
  const { graph, prices } = matching;
  const atM = [startM];
  const atCostM = [0];
  edges.forEach((directed, k) => {
    const lengthM = graph.lengthM[directed >> 1]!;
    const endM = k === edges.length - 1 ? toM : lengthM;
    const drivenM = k === 0 ? lengthM - fromM : endM;
    const next = edges[k + 1];
    const turn = next === undefined ? 0 : prices.turnM(directed, next);
    atM.push(atM[k]! + drivenM);
    atCostM.push(atCostM[k]! + edgeCostM(matching, directed, drivenM) + turn);
  });
  return { atM, atCostM };
}

/** @param metres to be driven on `directed`; `at` is where the search leaves it, another one when it runs backwards */
function seedOn(matching: Matching, directed: number, metres: number, at = directed): Seed {
  return { directed: at, costM: edgeCostM(matching, directed, metres), metres };
}

/** Backwards every edge stands for the one driven the other way. */
function search(
  { roads, graph, settings, prices }: Matching,
  seeds: readonly Seed[],
  goal: Place,
  limitM: number,
  { backwards }: { readonly backwards: boolean },
): Reached {
  const { lat, lon } = roads.nodes;
  const turned = backwards ? 1 : 0;
  return searchRoads(graph, settings.farSteps, seeds, {
    limitM,
    remainingM: (node) => distanceM(lat[node]!, lon[node]!, goal.lat, goal.lon) * CLOSER,
    extraM: (directed) => graph.lengthM[directed >> 1]! * prices.extraPerM(directed ^ turned),
    turnM: backwards ? (from, next) => prices.turnM(next ^ 1, from ^ 1) : prices.turnM,
  });
}

/** Roads and straight lines are measured by the same sphere; what rounding may add is taken off. */
const CLOSER = 0.999;

/** By entry: the rank of the last edge on the way to it that has one, the seed's where none has. */
function lastRanks(
  { directed, parent }: Reached,
  seedRanks: readonly number[],
  rankOf: (directed: number) => number | undefined,
): number[] {
  const ranks: (number | undefined)[] = directed.map(rankOf);
  directed.forEach((_, entry) => {
    const unranked: number[] = [];
    let at = entry;
    while (at >= 0 && ranks[at] === undefined) {
      unranked.push(at);
      at = parent[at]!;
    }
    const rank = at < 0 ? seedRanks[-1 - at] : ranks[at];
    for (const each of unranked) ranks[each] = rank;
  });
  return ranks.map((rank) => rank ?? -1);
}
