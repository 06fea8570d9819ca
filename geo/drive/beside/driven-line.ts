import type { Roads } from '../../roads/roads.ts';
import type { Drive, Stretch } from '../drive.ts';
import { nodesAlong } from '../nodes-along.ts';
import { oncePerDrive } from '../once-per-drive.ts';
import { placeDriven } from '../point-at.ts';

/** One straight piece of the driven line, in driving direction. */
export interface DrivenSegment {
  /** index into Roads.ways */
  readonly way: number;
  /** how many stretches the drive has before this one's: the place in drivenWays() */
  readonly stretch: number;
  readonly fromM: number;
  readonly toM: number;
  readonly lat1: number;
  readonly lon1: number;
  readonly lat2: number;
  readonly lon2: number;
  /** node indices where the piece begins or ends at one, else -1 */
  readonly node1: number;
  readonly node2: number;
}

/** The driven line in straight pieces, in driving order; what is off the map is left out. Looked up once per drive. */
export const drivenSegments: (drive: Drive, roads: Roads) => readonly DrivenSegment[] = oncePerDrive(layOut);

function layOut(drive: Drive, roads: Roads): DrivenSegment[] {
  const segments: DrivenSegment[] = [];
  let stretch = 0;
  for (const leg of drive.legs) {
    if (leg.kind !== 'stretch') continue;
    addSegments(segments, drive, roads, leg, stretch);
    stretch++;
  }
  return segments;
}

/** A node of the driven line, or where a stretch begins or ends between two. */
interface LinePlace {
  readonly lat: number;
  readonly lon: number;
  readonly atM: number;
  readonly node: number;
}

/** Nearer than this to a node is the node. Metres. */
const AT_NODE_M = 1e-3;

function addSegments(
  segments: DrivenSegment[],
  drive: Drive,
  roads: Roads,
  leg: Stretch,
  stretch: number,
): void {
  const places: LinePlace[] = nodesAlong(leg, roads).map(({ node, atM }) => ({
    lat: roads.nodes.lat[node]!,
    lon: roads.nodes.lon[node]!,
    atM,
    node,
  }));
  const first = places[0];
  const last = places.at(-1);
  if (first === undefined || first.atM > leg.fromM + AT_NODE_M)
    places.unshift(endAt(drive, roads, leg.fromM, leg.toM));
  if (last === undefined || last.atM < leg.toM - AT_NODE_M)
    places.push(endAt(drive, roads, leg.toM, leg.fromM));
  for (let i = 1; i < places.length; i++) {
    const a = places[i - 1]!;
    const b = places[i]!;
    segments.push({
      way: leg.way,
      stretch,
      fromM: a.atM,
      toM: b.atM,
      lat1: a.lat,
      lon1: a.lon,
      lat2: b.lat,
      lon2: b.lon,
      node1: a.node,
      node2: b.node,
    });
  }
}

/** Where the stretch begins or ends between nodes, looked up a hair inside it: at a break two places share one distance. */
function endAt(drive: Drive, roads: Roads, atM: number, otherEndM: number): LinePlace {
  const insideM = atM + Math.max(-AT_NODE_M, Math.min(AT_NODE_M, otherEndM - atM));
  return { ...placeDriven(drive, roads, insideM), atM, node: -1 };
}
