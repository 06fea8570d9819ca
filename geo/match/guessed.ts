import type { Roads } from '../roads/roads.ts';
import { distanceM, localFrame } from '../route/measure.ts';
import type { Span } from './drive.ts';
import type { RoadGraph } from './graph.ts';
import { type Lattice, WIDEST_M } from './lattice.ts';
import type { Run } from './path.ts';
import { alongWay, placeOnEdge } from './place.ts';
import { extraPerM, searchRoads, wayTo } from './search.ts';
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
    if ((lattice.gapM[i] as number) <= settings.sparseM || move?.kind !== 'roads') continue;
    const from = chain.state[i] as number;
    const to = chain.state[i + 1] as number;
    if (settings.drawn && keepsToLine(from, to, move)) continue;
    let atM = run.positionM[i - run.first] as number;
    const endM = run.positionM[i - run.first + 1] as number;
    if (endM - atM > LONG_WAY_ROUND * (lattice.gapM[i] as number) + settings.detourM) {
      spans.push({ fromM: atM, toM: endM });
      continue;
    }
    const other = findOther(from, to, move, i === run.first, i + 1 === run.last);
    const add = (directed: number, lengthM: number) => {
      if (!other.has(directed)) spans.push({ fromM: atM, toM: atM + lengthM });
      atM += lengthM;
    };
    const own = lattice.directed[from] as number;
    add(own, lengthOf(own) - (lattice.offsetM[from] as number));
    for (const edge of move.edges) add(edge, lengthOf(edge));
    add(lattice.directed[to] as number, lattice.offsetM[to] as number);
  }
  return spans;

  function lengthOf(directed: number): number {
    return graph.lengthM[directed >> 1] as number;
  }

  /** Directed edges of the best way when the roads of the fill are made dearer: it leaves them where another will do. */
  function findOther(
    from: number,
    to: number,
    move: Move & { kind: 'roads' },
    first: boolean,
    last: boolean,
  ) {
    const own = lattice.directed[from] as number;
    const goal = lattice.directed[to] as number;
    const fill = new Set([own, ...move.edges, goal].map((directed) => directed >> 1));
    const perM = (directed: number) =>
      1 + extraPerM(graph, settings.steps, directed) + (fill.has(directed >> 1) ? SENSIBLE_EXTRA : 0);
    const restM = lengthOf(own) - (lattice.offsetM[from] as number);
    const ontoM = lattice.offsetM[to] as number;
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
        Math.max(
          0,
          distanceM(nodes.lat[node] as number, nodes.lon[node] as number, place.lat, place.lon) - WIDEST_M,
        ),
      targets,
      slackM: Math.max(...targets.values()) * (1 + SENSIBLE_EXTRA),
      extraM: (directed) => lengthOf(directed) * (perM(directed) - 1),
    });
    let best: { at: number; costM: number; goal: number } | undefined;
    for (const [directed, offsetM] of targets) {
      const at = reached.indexOf.get(directed);
      if (at === undefined) continue;
      const costM = (reached.costM[at] as number) + offsetM * perM(directed);
      if (best === undefined || costM < best.costM) best = { at, costM, goal: directed };
    }
    if (best === undefined) return new Set([own, ...move.edges, goal]);
    const { edges, seed } = wayTo(reached, best.at);
    return new Set([...edges, best.goal, seeds[seed]?.directed ?? own]);
  }

  function keepsToLine(from: number, to: number, move: Move & { kind: 'roads' }): boolean {
    const a = placeOnEdge(roads, graph, lattice.directed[from] as number, lattice.offsetM[from] as number);
    const b = placeOnEdge(roads, graph, lattice.directed[to] as number, lattice.offsetM[to] as number);
    const frame = localFrame(a.lat, a.lon);
    const end = frame.toXY(b.lat, b.lon);
    const length = Math.hypot(end.x, end.y);
    const { nodes, ways } = roads;
    const own = lattice.directed[from] as number;
    const goal = lattice.directed[to] as number;
    const edges = [own, ...move.edges, goal];
    return edges.every((directed, k) => {
      const edge = directed >> 1;
      const startM = alongWay(graph, directed, 0);
      for (let ref = graph.firstRef[edge] as number; ref <= (graph.lastRef[edge] as number); ref++) {
        const offsetM = Math.abs((graph.alongM[ref] as number) - startM);
        if (k === 0 && offsetM < (lattice.offsetM[from] as number)) continue;
        if (k === edges.length - 1 && offsetM > (lattice.offsetM[to] as number)) continue;
        const node = ways.refs[ref] as number;
        const p = frame.toXY(nodes.lat[node] as number, nodes.lon[node] as number);
        const onM = (p.x * end.x + p.y * end.y) / length;
        const besideM = Math.abs(p.x * end.y - p.y * end.x) / length;
        if (besideM > DRAWN_M || onM < -DRAWN_M || onM > length + DRAWN_M) return false;
      }
      return true;
    });
  }
}
