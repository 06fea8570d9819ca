import { localFrame } from '../../earth/sphere.ts';
import type { Roads } from '../../roads/roads.ts';
import type { RoadGraph } from './graph/graph.ts';
import { alongWay, type Place, refBefore } from './graph/place.ts';

/** A drawn line says as much about the road beneath as one position every so many metres. */
const SPACING_M = 30;
/** Farther away than this a road is simply not the one drawn; a coarse line must not forbid it. */
const FARTHEST_M = 20;
/** However exact its vertices, a line may cut the bends between them. */
const SIGMA_M = 10;

/**
 * How badly roads fit the straight line drawn between two positions: nats for part of a directed edge, the squared
 * distance from the line taken every few metres as positions' distances are.
 */
export function compareToLine(
  from: Place,
  to: Place,
  roads: Roads,
  graph: RoadGraph,
): (directed: number, fromM: number, toM: number) => number {
  const frame = localFrame((from.lat + to.lat) / 2, (from.lon + to.lon) / 2);
  const a = frame.toXY(from.lat, from.lon);
  const b = frame.toXY(to.lat, to.lon);
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length2 = dx * dx + dy * dy;
  const { nodes, ways } = roads;

  function squareAway(x: number, y: number): number {
    const t = length2 > 0 ? ((x - a.x) * dx + (y - a.y) * dy) / length2 : 0;
    const on = Math.min(1, Math.max(0, t));
    const [ex, ey] = [x - a.x - on * dx, y - a.y - on * dy];
    return Math.min(ex * ex + ey * ey, FARTHEST_M * FARTHEST_M);
  }

  return (directed, fromM, toM) => {
    const way = graph.way[directed >> 1]!;
    const ends = [alongWay(graph, directed, fromM), alongWay(graph, directed, toM)] as const;
    const low = Math.min(...ends);
    const high = Math.max(...ends);
    let sum = 0;
    for (let ref = refBefore(roads, graph, way, low); low < high; ref++) {
      const startM = graph.alongM[ref]!;
      const endM = graph.alongM[ref + 1]!;
      const partFrom = Math.max(low, startM);
      const partTo = Math.min(high, endM);
      if (partTo > partFrom) {
        const p = nodeXY(ways.refs[ref]!);
        const q = nodeXY(ways.refs[ref + 1]!);
        const count = Math.ceil((partTo - partFrom) / SPACING_M);
        for (let k = 0; k < count; k++) {
          const at = partFrom + ((k + 0.5) / count) * (partTo - partFrom);
          const t = (at - startM) / (endM - startM);
          sum += squareAway(p.x + t * (q.x - p.x), p.y + t * (q.y - p.y)) * ((partTo - partFrom) / count);
        }
      }
      if (endM >= high || ref + 2 >= ways.start[way + 1]!) break;
    }
    return sum / (2 * SIGMA_M * SIGMA_M * SPACING_M);
  };

  function nodeXY(node: number): { x: number; y: number } {
    return frame.toXY(nodes.lat[node]!, nodes.lon[node]!);
  }
}
