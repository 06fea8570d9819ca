import { distanceM, localFrame } from '../../earth/sphere.ts';
import type { Roads } from '../../roads/roads.ts';
import { compareToLine } from './drawn-line.ts';
import type { RoadGraph } from './graph/graph.ts';
import { placeOnEdge } from './graph/place.ts';
import {
  createRows,
  extraPerM,
  type Reached,
  type Seed,
  searchRoads,
  turnBackM,
  wayTo,
} from './graph/search.ts';
import { type Lattice, LEAD, WIDEST_M } from './lattice.ts';
import type { MatchSettings } from './settings.ts';
import type { Positions } from './thin.ts';

/** How the drive gets from one position's state to the next one's. */
export type Move =
  /** along roads: the directed edges wholly driven between the two states' own edges */
  | { readonly kind: 'roads'; readonly edges: readonly number[] }
  /** on along the same directed edge (a small step back stands still) */
  | { readonly kind: 'same' }
  /** turning round on the same edge */
  | { readonly kind: 'turnBack' }
  /** not along mapped roads */
  | { readonly kind: 'off' };

export interface BestChain {
  /** chosen state of every position */
  readonly state: readonly number[];
  /** moves[i] leads from position i to i + 1 */
  readonly moves: readonly Move[];
  /**
   * By state: how much likelier the best chain is than the best chain through that state, nats. 0 on the chain;
   * right up to CLOSE, beyond it no more than that it is beyond.
   */
  readonly behind: Float64Array;
}

/** Another road this close in likelihood (nats) explains the positions about as well. */
export const CLOSE = 3;

/** Nats for starting or ending off the map. */
const END_OFF = 15;

/** Extra metres for driving part of a directed edge. */
type ExtraM = (directed: number, fromM: number, toM: number) => number;
const noExtra: ExtraM = () => 0;

const ROADS = 0;
const SAME = 1;
const TURN_BACK = 2;
const OFF = 3;

/**
 * The likeliest chain of states (Viterbi), and by a second sweep backwards how far every other state is behind it.
 *
 * A break (leaving the roads between two positions) costs as much as a detour of `detourM`. It bounds every step:
 * a state that is behind the best by more than a break can never win, so searches stay short.
 */
export function findBestChain(
  lattice: Lattice,
  positions: Positions,
  roads: Roads,
  graph: RoadGraph,
  settings: MatchSettings,
): BestChain {
  const { pointStart, directed, offsetM, emission, gapM, points } = lattice;
  const { betaM, steps, sparseM, detourM } = settings;
  const cost = new Float64Array(directed.length).fill(Infinity);
  const back = new Int32Array(directed.length).fill(-1);
  const how = new Uint8Array(directed.length);
  const fills = new Map<number, number[]>();
  // for the sweep backwards: no transition behind its target's best by more than CLOSE can come close in the end
  const links = { from: [] as number[], to: [] as number[], price: [] as number[] };
  const rowOf = createRows(graph, steps);

  for (let s = 0; s < (pointStart[1] ?? 0); s++) {
    const at = directed[s]!;
    if (at >= 0) cost[s] = emission[s]!;
    if (at === LEAD) cost[s] = emission[s]! + END_OFF;
  }
  for (let i = 0; i + 1 < points; i++) step(i);
  return trace();

  function step(i: number): void {
    const begin = pointStart[i]!;
    const mid = pointStart[i + 1]!;
    const end = pointStart[i + 2]!;
    const straight = gapM[i]!;
    const breakM = breakOver(straight);
    const worst = cost[leastOf(begin, mid)]! + breakM / betaM;
    if (straight > settings.farM) stepFar(begin, mid, end, straight, breakM, worst, i + 1);
    else stepNear(begin, mid, end, straight, worst);
    stepOff(begin, mid, end, straight, breakM);
  }

  /** Metres of detour that a break in the map between two positions weighs. */
  function breakOver(straight: number): number {
    return detourM + Math.min(straight, sparseM) + settings.detourPerM * Math.max(0, straight - sparseM);
  }

  function link(from: number, to: number, price: number, kind: number): void {
    const before = cost[from]!;
    if (before === Infinity) return;
    const total = before + price + emission[to]!;
    if (total > cost[to]! + CLOSE) return;
    links.from.push(from);
    links.to.push(to);
    links.price.push(price);
    if (total >= cost[to]!) return;
    cost[to] = total;
    back[to] = from;
    how[to] = kind;
  }

  /** Links two states on one edge; false when the one does not lead to the other within it. */
  function linkOnEdge(from: number, to: number, straight: number, extraM: ExtraM): boolean {
    const a = directed[from]!;
    const b = directed[to]!;
    const startM = offsetM[from]!;
    const length = graph.lengthM[a >> 1]!;
    if (a === b) {
      const endM = offsetM[to]!;
      if (endM < startM - settings.jitterM) return false;
      const driven = Math.max(0, endM - startM);
      const extra = driven > 0 ? extraM(a, startM, endM) : 0;
      link(from, to, (Math.abs(driven - straight) + extra) / betaM, SAME);
      return true;
    }
    if (a !== (b ^ 1)) return false;
    const endM = length - offsetM[to]!;
    const driven = Math.abs(endM - startM);
    const extra = turnBackM(graph, steps, a) + extraM(a, Math.min(startM, endM), Math.max(startM, endM));
    link(from, to, (Math.abs(driven - straight) + extra) / betaM, TURN_BACK);
    return true;
  }

  function stepNear(begin: number, mid: number, end: number, straight: number, worst: number): void {
    for (let s = begin; s < mid; s++) {
      const a = directed[s]!;
      if (a < 0 || cost[s]! > worst) continue;
      const restM = graph.lengthM[a >> 1]! - offsetM[s]!;
      // what the state may still spend before a break from the best state would be cheaper
      const budgetM = (worst - cost[s]!) * betaM;
      const limitM = straight + budgetM - restM;
      let row: Reached | undefined;
      for (let t = mid; t < end; t++) {
        const b = directed[t]!;
        if (b < 0 || linkOnEdge(s, t, straight, noExtra) || limitM < 0) continue;
        row ??= rowOf(a, limitM);
        const at = row.indexOf.get(b);
        if (at === undefined) continue;
        const metres = row.metres[at]!;
        const driven = restM + metres + offsetM[t]!;
        const extra = row.costM[at]! - metres;
        const weighed = Math.abs(driven - straight) + extra;
        if (weighed <= budgetM) link(s, t, weighed / betaM, ROADS);
      }
    }
  }

  /**
   * Far apart: the way driven is hardly ever less than the straight distance, so its cost simply adds up, and one
   * search from all states at once finds the best way to each next state.
   */
  function stepFar(
    begin: number,
    mid: number,
    end: number,
    straight: number,
    breakM: number,
    worst: number,
    next: number,
  ): void {
    const least = cost[leastOf(begin, mid)]!;
    const extraM = extraBetween(next - 1, next);
    const seeds: Seed[] = [];
    const seedState: number[] = [];
    for (let s = begin; s < mid; s++) {
      const a = directed[s]!;
      if (a < 0 || cost[s]! > worst) continue;
      const length = graph.lengthM[a >> 1]!;
      const restM = length - offsetM[s]!;
      const spentM = (cost[s]! - least) * betaM + 2 * aheadM(s, next - 1);
      seeds.push({
        directed: a,
        costM: spentM + restM + extraM(a, offsetM[s]!, length),
        metres: restM,
      });
      seedState.push(s);
      for (let t = mid; t < end; t++) if (directed[t]! >= 0) linkOnEdge(s, t, straight, extraM);
    }
    const targets = new Map<number, number>();
    for (let t = mid; t < end; t++) {
      const b = directed[t]!;
      if (b >= 0) targets.set(b, Math.max(targets.get(b) ?? 0, offsetM[t]!));
    }
    if (seeds.length === 0 || targets.size === 0) return;
    const lat = positions.lat[next]!;
    const lon = positions.lon[next]!;
    const { nodes } = roads;
    const reached = searchRoads(graph, steps, seeds, {
      limitM: straight + breakM,
      remainingM: (node) => Math.max(0, distanceM(nodes.lat[node]!, nodes.lon[node]!, lat, lon) - WIDEST_M),
      targets,
      slackM: 4 * detourM + straight / 2,
      extraM: (edge) => extraM(edge, 0, graph.lengthM[edge >> 1]!),
    });
    for (let t = mid; t < end; t++) {
      const b = directed[t]!;
      const at = reached.indexOf.get(b);
      if (b < 0 || at === undefined) continue;
      const { edges, seed } = wayTo(reached, at);
      const from = seedState[seed]!;
      const spentM = (cost[from]! - least) * betaM + 2 * aheadM(from, next - 1);
      const endM = offsetM[t]!;
      const metres = reached.metres[at]!;
      const extra = reached.costM[at]! - metres - spentM + extraM(b, 0, endM);
      link(from, t, (Math.abs(metres + endM - straight) + extra) / betaM, ROADS);
      if (back[t] === from && how[t] === ROADS) fills.set(t, edges);
    }
  }

  /**
   * How far a state lies on from its position towards the next. A way driven from there is shorter than the straight
   * distance by as much, which must not count as a gain: it counts as the same amount lost.
   */
  function aheadM(s: number, i: number): number {
    if (lattice.distanceM[s]! < 1) return 0;
    const [lat, lon] = [positions.lat[i]!, positions.lon[i]!];
    const frame = localFrame(lat, lon);
    const to = frame.toXY(positions.lat[i + 1]!, positions.lon[i + 1]!);
    const place = placeOnEdge(roads, graph, directed[s]!, offsetM[s]!);
    const at = frame.toXY(place.lat, place.lon);
    return Math.max(0, (at.x * to.x + at.y * to.y) / Math.hypot(to.x, to.y));
  }

  /** Extra metres of part of a directed edge between two positions: its class, and its fit to a drawn line. */
  function extraBetween(i: number, next: number): ExtraM {
    const place = (k: number) => ({ lat: positions.lat[k]!, lon: positions.lon[k]! });
    const misfit = settings.drawn ? compareToLine(place(i), place(next), roads, graph) : undefined;
    return (edge, fromM, toM) =>
      (toM - fromM) * extraPerM(graph, steps, edge) +
      (misfit === undefined ? 0 : betaM * misfit(edge, fromM, toM));
  }

  function stepOff(begin: number, mid: number, end: number, straight: number, breakM: number): void {
    const far = (settings.detourPerM * Math.max(0, straight - sparseM)) / betaM;
    const half = detourM / 2 / betaM + far;
    const [lead, between, tail] = [mid - 3, mid - 2, mid - 1];
    const [nextLead, nextBetween, nextTail] = [end - 3, end - 2, end - 1];
    const road = leastOf(begin, lead);
    link(lead, nextLead, far, OFF);
    link(between, nextBetween, far, OFF);
    link(tail, nextTail, far, OFF);
    if (road >= 0) {
      link(road, nextBetween, half, OFF);
      link(road, nextTail, END_OFF + far, OFF);
    }
    for (let t = mid; t < nextLead; t++) {
      link(lead, t, far, OFF);
      link(between, t, half, OFF);
      if (road >= 0) link(road, t, breakM / betaM, OFF);
    }
  }

  /** The cheapest state of a range; -1 when the range is empty. */
  function leastOf(begin: number, end: number): number {
    let best = begin;
    for (let s = begin + 1; s < end; s++) if (cost[s]! < cost[best]!) best = s;
    return end > begin ? best : -1;
  }

  function trace(): BestChain {
    const state: number[] = [];
    const moves: Move[] = [];
    let at = leastOf(pointStart[points - 1]!, pointStart[points]!);
    const total = cost[at]!;
    for (let i = points - 1; i > 0; i--) {
      state.push(at);
      const from = back[at]!;
      moves.push(moveTo(from, at, gapM[i - 1]!));
      at = from;
    }
    state.push(at);
    return { state: state.reverse(), moves: moves.reverse(), behind: sweepBack(total) };
  }

  function moveTo(from: number, to: number, straight: number): Move {
    if (how[to] === OFF) return { kind: 'off' };
    if (how[to] === SAME) return { kind: 'same' };
    if (how[to] === TURN_BACK) return { kind: 'turnBack' };
    const known = straight > settings.farM ? fills.get(to) : undefined;
    if (known !== undefined) return { kind: 'roads', edges: known };
    const row = rowOf(directed[from]!, 0);
    return { kind: 'roads', edges: wayTo(row, row.indexOf.get(directed[to]!) as number).edges };
  }

  function sweepBack(total: number): Float64Array {
    const onward = new Float64Array(directed.length).fill(Infinity);
    onward.fill(0, pointStart[points - 1]);
    for (let k = links.from.length - 1; k >= 0; k--) {
      const from = links.from[k]!;
      const to = links.to[k]!;
      const through = links.price[k]! + emission[to]! + onward[to]!;
      if (through < onward[from]!) onward[from] = through;
    }
    return onward.map((rest, s) => rest + cost[s]! - total);
  }
}
