import createGraph from 'ngraph.graph';
import { nba } from 'ngraph.path';
import { roadGraph } from '../../geo/graph/road-graph.ts';
import type { Roads } from '../../geo/roads/roads.ts';
import { type Driven, scoreMatch } from '../support/score-match.ts';

/** How a planner is thought to choose: by the posted limits, or by length alone. */
export type Chosen = 'quickest' | 'shortest';

/**
 * What a planner that knows the true road under every point would fill in between points so many metres apart: a search
 * of a graph library over the mapped limits, which shares nothing with the matching. @param order true directed edges
 * @returns share of what it drives that is on another road than the true one
 */
export function sparseOracle(
  roads: Roads,
  order: readonly number[],
  truth: Driven,
  { everyM, chosen }: { readonly everyM: number; readonly chosen: Chosen },
): number {
  const graph = roadGraph(roads);
  const finder = finderOn(roads, chosen);
  const filled = new Map<number, number>();
  const drive = (edge: number) => filled.set(edge, (filled.get(edge) ?? 0) + (graph.lengthM[edge >> 1] ?? 0));
  const points = pointsAlong(order, (edge) => graph.lengthM[edge >> 1] ?? 0, everyM);
  drive(order[0] ?? 0);
  for (const [i, to] of points.entries()) {
    const from = i === 0 ? 0 : (points[i - 1] ?? 0);
    if (to === from) continue;
    const [left, next] = [order[from] ?? 0, order[to] ?? 0];
    for (const edge of finder(graph.head[left] ?? 0, graph.tail[next] ?? 0)) drive(edge);
    drive(next);
  }
  const { rightM, addedM } = scoreMatch(truth, filled);
  return addedM / (rightM + addedM);
}

/** Places in the order of the edges that hold a point each, the last edge among them. */
function pointsAlong(order: readonly number[], lengthM: (edge: number) => number, everyM: number): number[] {
  const points: number[] = [];
  let along = 0;
  for (const [i, edge] of order.entries()) {
    const before = Math.floor(along / everyM);
    along += lengthM(edge);
    if (i > 0 && (Math.floor(along / everyM) > before || i === order.length - 1)) points.push(i);
  }
  return points;
}

function finderOn(roads: Roads, chosen: Chosen): (from: number, to: number) => number[] {
  const graph = roadGraph(roads);
  const links = createGraph<undefined, number>();
  const costOf = (edge: number) => {
    const kmh = Number(roads.ways.tags[graph.way[edge >> 1] ?? 0]?.['maxspeed'] ?? 50);
    return (graph.lengthM[edge >> 1] ?? 0) / (chosen === 'quickest' ? kmh : 1);
  };
  // of parallel roads the library keeps the last: the cheapest is laid last
  const legal = Array.from({ length: 2 * graph.edgeCount }, (_, edge) => edge)
    .filter((edge) => graph.wrongWay[edge] === 0)
    .sort((a, b) => costOf(b) - costOf(a));
  for (const edge of legal) links.addLink(graph.tail[edge] ?? 0, graph.head[edge] ?? 0, edge);
  const finder = nba(links, {
    oriented: true,
    distance: (_from, _to, link) => costOf(link.data),
  });
  return (from, to) => {
    if (from === to) return [];
    // the end comes first
    const nodes = finder
      .find(from, to)
      .map(({ id }) => id)
      .reverse();
    return nodes.slice(1).map((node, i) => links.getLink(nodes[i] ?? 0, node)?.data ?? 0);
  };
}
