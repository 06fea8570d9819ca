import { localFrame } from '../../earth/frame.ts';
import { distanceM } from '../../earth/sphere.ts';
import { placeOnEdge } from '../../graph/place-on-edge.ts';
import { type Reached, type Seed, searchRoads, wayTo } from '../../graph/search-roads.ts';
import { link, MOVE } from './chain-costs.ts';
import { type ChainStep, type ChainWork, type ExtraM, linkOnEdge } from './chain-step.ts';
import { compareToLine } from './compare-to-line.ts';
import { WIDEST_M } from './lattice.ts';

/** A state to start from, and what it spent before the search begins. */
interface Start {
  readonly state: number;
  readonly spentM: number;
  readonly seed: Seed;
}

/**
 * Links the states of two positions far apart. The way driven is hardly ever less than the straight distance, so its
 * cost simply adds up, and one search from all states at once finds the best way to each next state.
 */
export function linkFar(work: ChainWork, step: ChainStep): void {
  const { directed } = work.lattice;
  const extraM = extraBetween(work, step);
  const starts = startsOf(work, step, extraM);
  for (const { state } of starts)
    for (let to = step.mid; to < step.end; to++)
      if (directed[to]! >= 0) linkOnEdge(work, step, state, to, extraM);
  const targets = targetsOf(work, step);
  if (starts.length === 0 || targets.size === 0) return;
  linkReached(work, step, starts, reach(work, step, starts, targets, extraM), extraM);
}

/** Extra metres of part of a directed edge between position `i` and the next: its price, and its fit to a drawn line. */
function extraBetween(
  { positions, roads, graph, settings, prices }: ChainWork,
  { i, betaM }: ChainStep,
): ExtraM {
  const place = (k: number) => ({ lat: positions.lat[k]!, lon: positions.lon[k]! });
  const misfit = settings.drawn ? compareToLine(place(i), place(i + 1), roads, graph) : undefined;
  return (directed, fromM, toM) =>
    (toM - fromM) * prices.extraPerM(directed) +
    (misfit === undefined ? 0 : betaM * misfit(directed, fromM, toM));
}

function startsOf(work: ChainWork, step: ChainStep, extraM: ExtraM): Start[] {
  const { i, betaM, begin, mid, least, worst } = step;
  const { lattice, graph, costs } = work;
  const { directed, offsetM } = lattice;
  const starts: Start[] = [];
  for (let state = begin; state < mid; state++) {
    const a = directed[state]!;
    if (a < 0 || costs.cost[state]! > worst) continue;
    const lengthM = graph.lengthM[a >> 1]!;
    const restM = lengthM - offsetM[state]!;
    const spentM = (costs.cost[state]! - least) * betaM + 2 * aheadM(work, state, i);
    const costM = spentM + restM + extraM(a, offsetM[state]!, lengthM);
    starts.push({ state, spentM, seed: { directed: a, costM, metres: restM } });
  }
  return starts;
}

/**
 * How far a state lies on from its position towards the next. A way driven from there is shorter than the straight
 * distance by as much, which must not count as a gain: it counts as the same amount lost.
 */
function aheadM({ lattice, positions, roads, graph }: ChainWork, state: number, i: number): number {
  if (lattice.distanceM[state]! < 1) return 0;
  const frame = localFrame(positions.lat[i]!, positions.lon[i]!);
  const to = frame.toXY(positions.lat[i + 1]!, positions.lon[i + 1]!);
  const place = placeOnEdge(roads, graph, lattice.directed[state]!, lattice.offsetM[state]!);
  const at = frame.toXY(place.lat, place.lon);
  return Math.max(0, (at.x * to.x + at.y * to.y) / Math.hypot(to.x, to.y));
}

/** Directed edges to come to, each with the farthest that a state lies along it. */
function targetsOf({ lattice }: ChainWork, { mid, end }: ChainStep): ReadonlyMap<number, number> {
  const targets = new Map<number, number>();
  for (let to = mid; to < end; to++) {
    const b = lattice.directed[to]!;
    if (b >= 0) targets.set(b, Math.max(targets.get(b) ?? 0, lattice.offsetM[to]!));
  }
  return targets;
}

function reach(
  { positions, roads, graph, settings, prices }: ChainWork,
  { i, straightM, steps, breakM }: ChainStep,
  starts: readonly Start[],
  targets: ReadonlyMap<number, number>,
  extraM: ExtraM,
): Reached {
  const lat = positions.lat[i + 1]!;
  const lon = positions.lon[i + 1]!;
  const { nodes } = roads;
  const seeds = starts.map(({ seed }) => seed);
  return searchRoads(graph, steps, seeds, {
    limitM: straightM + breakM,
    remainingM: (node) => Math.max(0, distanceM(nodes.lat[node]!, nodes.lon[node]!, lat, lon) - WIDEST_M),
    targets,
    slackM: settings.slackM + straightM / 2,
    extraM: (directed) => extraM(directed, 0, graph.lengthM[directed >> 1]!),
    turnM: prices.turnM,
  });
}

function linkReached(
  { lattice, costs }: ChainWork,
  { mid, end, straightM, betaM }: ChainStep,
  starts: readonly Start[],
  reached: Reached,
  extraM: ExtraM,
): void {
  for (let to = mid; to < end; to++) {
    const b = lattice.directed[to]!;
    const entry = reached.indexOf.get(b);
    if (b < 0 || entry === undefined) continue;
    const { edges, seed } = wayTo(reached, entry);
    const start = starts[seed];
    if (start === undefined) continue;
    const endM = lattice.offsetM[to]!;
    const metres = reached.metres[entry]!;
    const extra = reached.costM[entry]! - metres - start.spentM + extraM(b, 0, endM);
    link(costs, start.state, to, (Math.abs(metres + endM - straightM) + extra) / betaM, MOVE.roads);
    if (costs.back[to] === start.state && costs.how[to] === MOVE.roads) costs.fills.set(to, edges);
  }
}
