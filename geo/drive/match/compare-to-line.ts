import { type LocalFrame, localFrame } from '../../earth/frame.ts';
import { shareNearest } from '../../earth/segment.ts';
import type { Place } from '../../earth/sphere.ts';
import { alongWay, refBefore } from '../../graph/place-on-edge.ts';
import type { RoadEdges } from '../../graph/road-edges.ts';
import type { Roads } from '../../roads/roads.ts';

/** A drawn line says as much about the road beneath as one position every so many metres. */
const SPACING_M = 30;
/** Farther away than this a road is simply not the one drawn; a coarse line must not forbid it. */
const FARTHEST_M = 20;
/** However exact its vertices, a line may cut the bends between them. */
const SIGMA_M = 10;

/** A straight line in a flat frame about its middle: from x, y on by dx, dy. Metres. */
interface Line {
  readonly frame: LocalFrame;
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

/**
 * How badly roads fit the straight line drawn between two positions: nats for part of a directed edge, the squared
 * distance from the line taken every few metres as positions' distances are.
 */
export function compareToLine(
  from: Place,
  to: Place,
  roads: Roads,
  edges: RoadEdges,
): (directed: number, fromM: number, toM: number) => number {
  const line = lineFrom(from, to);
  const { nodes, ways } = roads;
  return (directed, fromM, toM) => {
    const way = edges.way[directed >> 1]!;
    const startsM = alongWay(edges, directed, fromM);
    const endsM = alongWay(edges, directed, toM);
    const low = Math.min(startsM, endsM);
    const high = Math.max(startsM, endsM);
    let sum = 0;
    for (let ref = refBefore(roads, edges, way, low); low < high; ref++) {
      const startM = edges.alongM[ref]!;
      const endM = edges.alongM[ref + 1]!;
      const partFrom = Math.max(low, startM);
      const partTo = Math.min(high, endM);
      if (partTo > partFrom) {
        const a = ways.refs[ref]!;
        const b = ways.refs[ref + 1]!;
        const p = line.frame.toXY(nodes.lat[a]!, nodes.lon[a]!);
        const q = line.frame.toXY(nodes.lat[b]!, nodes.lon[b]!);
        const count = Math.ceil((partTo - partFrom) / SPACING_M);
        for (let k = 0; k < count; k++) {
          const at = partFrom + ((k + 0.5) / count) * (partTo - partFrom);
          const t = (at - startM) / (endM - startM);
          const away = squareAway(line, p.x + t * (q.x - p.x), p.y + t * (q.y - p.y));
          sum += away * ((partTo - partFrom) / count);
        }
      }
      if (endM >= high || ref + 2 >= ways.start[way + 1]!) break;
    }
    return sum / (2 * SIGMA_M * SIGMA_M * SPACING_M);
  };
}

function lineFrom(from: Place, to: Place): Line {
  const frame = localFrame((from.lat + to.lat) / 2, (from.lon + to.lon) / 2);
  const { x, y } = frame.toXY(from.lat, from.lon);
  const end = frame.toXY(to.lat, to.lon);
  const [dx, dy] = [end.x - x, end.y - y];
  return { frame, x, y, dx, dy };
}

/** Squared distance of a place from a line, no more than FARTHEST_M makes it. */
function squareAway({ x, y, dx, dy }: Line, atX: number, atY: number): number {
  const on = shareNearest(atX - x, atY - y, dx, dy);
  const [ex, ey] = [atX - x - on * dx, atY - y - on * dy];
  return Math.min(ex * ex + ey * ey, FARTHEST_M * FARTHEST_M);
}
