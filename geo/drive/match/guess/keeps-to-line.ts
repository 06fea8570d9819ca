import { localFrame } from '../../../earth/frame.ts';
import { alongWay, placeOnEdge } from '../../../graph/place-on-edge.ts';
import type { Matching } from '../lattice.ts';
import type { Fill } from './fill.ts';

/** A way that keeps this close to a drawn line is the way drawn. */
const DRAWN_M = 20;

/** Whether every node driven lies by the straight line between the fill's two ends. */
export function keepsToLine({ roads, graph }: Matching, { edges, fromM, toM }: Fill): boolean {
  const a = placeOnEdge(roads, graph, edges[0]!, fromM);
  const b = placeOnEdge(roads, graph, edges.at(-1)!, toM);
  const frame = localFrame(a.lat, a.lon);
  const end = frame.toXY(b.lat, b.lon);
  const length = Math.hypot(end.x, end.y);
  const { nodes, ways } = roads;
  return edges.every((directed, k) => {
    const edge = directed >> 1;
    const startM = alongWay(graph, directed, 0);
    for (let ref = graph.firstRef[edge]!; ref <= graph.lastRef[edge]!; ref++) {
      const offsetM = Math.abs(graph.alongM[ref]! - startM);
      if (k === 0 && offsetM < fromM) continue;
      if (k === edges.length - 1 && offsetM > toM) continue;
      const node = ways.refs[ref]!;
      const p = frame.toXY(nodes.lat[node]!, nodes.lon[node]!);
      const onM = (p.x * end.x + p.y * end.y) / length;
      const besideM = Math.abs(p.x * end.y - p.y * end.x) / length;
      if (besideM > DRAWN_M || onM < -DRAWN_M || onM > length + DRAWN_M) return false;
    }
    return true;
  });
}
