import { distanceM, localFrame } from '../../earth/sphere.ts';
import type { Roads } from '../../roads/roads.ts';
import type { Span } from '../drive.ts';
import type { RoadGraph } from './graph/graph.ts';
import type { Run } from './graph/path.ts';
import { alongWay, placeOnEdge } from './graph/place.ts';
import { extraPerM, searchRoads, wayTo } from './graph/search.ts';
import { type Lattice, WIDEST_M } from './lattice.ts';
import type { MatchSettings } from './settings.ts';
import type { BestChain, Move } from './viterbi.ts';

/** Another way is sensible up to so much longer than the one filled in. */
const SENSIBLE_EXTRA = 1.5;
/** A way round so much longer than the straight line may stand for a road the map does not have. */
const LONG_WAY_ROUND = 1.6;
/** A way that keeps this close to a drawn line is the way drawn. */
const DRAWN_M = 20;

/** Spans of a run, in metres along it, filled in between far positions where another sensible road exists. */
export function findGuesses(
  run: Run,
  chain: BestChain,
  lattice: Lattice,
  roads: Roads,
  graph: RoadGraph,
  settings: MatchSettings,
): Span[] {
  const spans: Span[] = [];
  for (let i = run.first; i < run.last; i++) {
    const move = chain.moves[i];
    if (lattice.gapM[i]! <= settings.sparseM || move?.kind !== 'roads') continue;
    const from = chain.state[i]!;
    const to = chain.state[i + 1]!;
    if (settings.drawn && keepsToLine(from, to, move)) continue;
    let atM = run.positionM[i - run.first]!;
    const endM = run.positionM[i - run.first + 1]!;
    if (endM - atM > LONG_WAY_ROUND * lattice.gapM[i]! + settings.detourM) {
      spans.push({ fromM: atM, toM: endM });
      continue;
    }
    const other = findOther(from, to, move, i === run.first, i + 1 === run.last);
    const add = (directed: number, lengthM: number) => {
      if (!other.has(directed)) spans.push({ fromM: atM, toM: atM + lengthM });
      atM += lengthM;
    };
    const own = lattice.directed[from]!;
    add(own, lengthOf(own) - lattice.offsetM[from]!);
    for (const edge of move.edges) add(edge, lengthOf(edge));
    add(lattice.directed[to]!, lattice.offsetM[to]!);
  }
  return spans;

  function lengthOf(directed: number): number {
    return graph.lengthM[directed >> 1]!;
  }

  /** Directed edges of the best way when the roads of the fill are made dearer: it leaves them where another will do. */
  function findOther(
    from: number,
    to: number,
    move: Move & { kind: 'roads' },
    first: boolean,
    last: boolean,
  ) {
    const own = lattice.directed[from]!;
    const goal = lattice.directed[to]!;
    const fill = new Set([own, ...move.edges, goal].map((directed) => directed >> 1));
    const perM = (directed: number) =>
      1 + extraPerM(graph, settings.steps, directed) + (fill.has(directed >> 1) ? SENSIBLE_EXTRA : 0);
    const restM = lengthOf(own) - lattice.offsetM[from]!;
    const ontoM = lattice.offsetM[to]!;
    // at the ends of the drive nothing tells which way round the road is entered or left
    const seeds = [{ directed: own, costM: restM * perM(own), metres: restM }];
    const backM = lengthOf(own) - restM;
    if (first) seeds.push({ directed: own ^ 1, costM: backM * perM(own ^ 1), metres: backM });
    const targets = new Map([[goal, ontoM]]);
    if (last) targets.set(goal ^ 1, lengthOf(goal) - ontoM);
    const place = placeOnEdge(roads, graph, goal, ontoM);
    const { nodes } = roads;
    const reached = searchRoads(graph, settings.steps, seeds, {
      limitM: Infinity,
      remainingM: (node) =>
        Math.max(0, distanceM(nodes.lat[node]!, nodes.lon[node]!, place.lat, place.lon) - WIDEST_M),
      targets,
      slackM: Math.max(...targets.values()) * (1 + SENSIBLE_EXTRA),
      extraM: (directed) => lengthOf(directed) * (perM(directed) - 1),
    });
    let best: { at: number; costM: number; goal: number } | undefined;
    for (const [directed, offsetM] of targets) {
      const at = reached.indexOf.get(directed);
      if (at === undefined) continue;
      const costM = reached.costM[at]! + offsetM * perM(directed);
      if (best === undefined || costM < best.costM) best = { at, costM, goal: directed };
    }
    if (best === undefined) return new Set([own, ...move.edges, goal]);
    const { edges, seed } = wayTo(reached, best.at);
    return new Set([...edges, best.goal, seeds[seed]?.directed ?? own]);
  }

  function keepsToLine(from: number, to: number, move: Move & { kind: 'roads' }): boolean {
    const a = placeOnEdge(roads, graph, lattice.directed[from]!, lattice.offsetM[from]!);
    const b = placeOnEdge(roads, graph, lattice.directed[to]!, lattice.offsetM[to]!);
    const frame = localFrame(a.lat, a.lon);
    const end = frame.toXY(b.lat, b.lon);
    const length = Math.hypot(end.x, end.y);
    const { nodes, ways } = roads;
    const own = lattice.directed[from]!;
    const goal = lattice.directed[to]!;
    const edges = [own, ...move.edges, goal];
    return edges.every((directed, k) => {
      const edge = directed >> 1;
      const startM = alongWay(graph, directed, 0);
      for (let ref = graph.firstRef[edge]!; ref <= graph.lastRef[edge]!; ref++) {
        const offsetM = Math.abs(graph.alongM[ref]! - startM);
        if (k === 0 && offsetM < lattice.offsetM[from]!) continue;
        if (k === edges.length - 1 && offsetM > lattice.offsetM[to]!) continue;
        const node = ways.refs[ref]!;
        const p = frame.toXY(nodes.lat[node]!, nodes.lon[node]!);
        const onM = (p.x * end.x + p.y * end.y) / length;
        const besideM = Math.abs(p.x * end.y - p.y * end.x) / length;
        if (besideM > DRAWN_M || onM < -DRAWN_M || onM > length + DRAWN_M) return false;
      }
      return true;
    });
  }
}
