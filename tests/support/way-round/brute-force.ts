import type { RoadCosts } from '../../../geo/wayround/price/road-costs.ts';
import { turnTenths } from '../../../geo/wayround/price/turn-prices.ts';
import { isLegalWalk, type WalkPiece } from './legal-walk.ts';

/** Walks tried before a network is left as too large for this. */
const MOST_TRIED = 1200;

/**
 * The least-cost legal walk from the end of one directed edge to the end of another, found by trying every walk.
 * Legality is read off the whole walk from raw tags; only the figures of single edges and turns are the costs'.
 * @returns for one network, questions about which share what was seen of short walks: tenths of seconds, 'none' where no
 * walk is legal, undefined where there are too many walks to try
 */
export function bruteForce(costs: RoadCosts): (from: number, to: number) => number | 'none' | undefined {
  const { graph, roads } = costs;
  const pieceOf = pieces(costs);
  const open = { ...roads, nodes: { ...roads.nodes, tags: turningOnly(roads) } };
  const vias = new Set(roads.restrictions.flatMap(({ viaWays }) => viaWays));
  const outOf = new Map<number, number[]>();
  for (let directed = 0; directed < 2 * graph.edgeCount; directed++) {
    const node = graph.tail[directed]!;
    outOf.set(node, [...(outOf.get(node) ?? []), directed]);
  }
  const joined = new Map<number, boolean>();
  const joins = (pieces: readonly number[]) => {
    const key = pieces.reduce((sum, each) => sum * 1000 + each + 1, 0);
    const known = joined.get(key) ?? isLegalWalk(pieces.map(pieceOf), open);
    joined.set(key, known);
    return known;
  };
  return (from, to) => {
    let best: number | undefined;
    let tried = 0;
    const go = (walk: readonly number[], cost: number) => {
      if ((best !== undefined && cost >= best) || tried++ > MOST_TRIED) return;
      const last = walk.at(-1)!;
      if (walk.length > 1 && last === to && isLegalWalk(walk.map(pieceOf), roads)) {
        best = cost;
        return;
      }
      for (const next of outOf.get(graph.head[last]!) ?? []) {
        // a loop back onto an edge is of use only where what was driven before it matters: on the way of a restriction
        const most = vias.has(roads.ways.id[graph.way[next >> 1]!]!) ? 2 : 1;
        if (walk.filter((each) => each === next).length >= most) continue;
        // what no later piece can mend: a closed road, a forbidden turn
        if (!joins([...walk.slice(-2), next])) continue;
        go([...walk, next], cost + stepTenths(costs, last, next));
      }
    };
    if (isLegalWalk([pieceOf(from)], roads)) go([from], 0);
    return tried > MOST_TRIED ? undefined : (best ?? 'none');
  };
}

function turningOnly(roads: RoadCosts['roads']): RoadCosts['roads']['nodes']['tags'] {
  return new Map([...roads.nodes.tags].filter(([, tags]) => tags['highway'] === 'turning_circle'));
}

function pieces({ graph, roads }: RoadCosts): (directed: number) => WalkPiece {
  return (directed) => {
    const edge = directed >> 1;
    const nodes = [...roads.ways.refs.subarray(graph.firstRef[edge]!, graph.lastRef[edge]! + 1)];
    const forward = directed % 2 === 0;
    return { way: graph.way[edge]!, forward, nodes: forward ? nodes : nodes.reverse() };
  };
}

function stepTenths(costs: RoadCosts, from: number, to: number): number {
  const turned = to === (from ^ 1) ? 600 : turnTenths(costs, from, to);
  const [was, now] = [costs.kind(from), costs.kind(to)];
  const doubts = costs.point(from).priceTenths + (was === now ? 0 : now.priceTenths);
  return turned + costs.waitTenths(from) + doubts + costs.costTenths(to);
}
