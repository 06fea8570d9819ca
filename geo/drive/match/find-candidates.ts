import type { Place } from '../../earth/sphere.ts';
import type { RoadEdges } from '../../graph/road-edges.ts';
import type { NearSegment, Roads } from '../../roads/roads.ts';

/** A place on an edge near a position. */
export interface Candidate {
  readonly edge: number;
  /** metres along the edge in drawn order */
  readonly offsetM: number;
  readonly distanceM: number;
}

const MOST = 16;
/** Candidates this much farther than the nearest never win; leaving them out keeps dense cities quick. */
const BEHIND_NEAREST_M = 30;

/**
 * The places where roads come nearest to a position: for every edge each local minimum of the distance, so that
 * both arms of a hairpin stand as candidates. Nearest first.
 */
export function findCandidates(
  roads: Roads,
  edges: RoadEdges,
  { lat, lon }: Place,
  radiusM: number,
): Candidate[] {
  const near = roads.index.near(lat, lon, radiusM);
  near.sort((a, b) => a.way - b.way || a.seg - b.seg);
  const found: Candidate[] = [];
  near.forEach((here, i) => {
    const ref = roads.ways.start[here.way]! + here.seg;
    const edge = edges.edgeOfSegment[ref]!;
    if (edge < 0) return;
    const ends = { first: ref === edges.firstRef[edge], last: ref + 1 === edges.lastRef[edge] };
    if (!isLocalMinimum(here, near[i - 1], near[i + 1], ends)) return;
    const from = edges.alongM[ref]!;
    const to = edges.alongM[ref + 1]!;
    const offsetM = from + here.t * (to - from) - edges.alongM[edges.firstRef[edge]!]!;
    found.push({ edge, offsetM, distanceM: here.distanceM });
  });
  found.sort((a, b) => a.distanceM - b.distanceM || a.edge - b.edge || a.offsetM - b.offsetM);
  const reach = (found[0]?.distanceM ?? 0) + BEHIND_NEAREST_M;
  return found.filter((candidate, rank) => rank < MOST && candidate.distanceM <= reach);
}

/** @param ends whether the segment is the first or the last of its edge */
function isLocalMinimum(
  here: NearSegment,
  before: NearSegment | undefined,
  after: NearSegment | undefined,
  ends: { readonly first: boolean; readonly last: boolean },
): boolean {
  if (here.t > 0 && here.t < 1) return true;
  if (here.t <= 0) {
    if (ends.first) return true;
    // at a bend both segments end nearest at the shared vertex: counted once, here
    return before?.way === here.way && before.seg === here.seg - 1 && before.t >= 1;
  }
  if (ends.last) return true;
  return !(after?.way === here.way && after.seg === here.seg + 1);
}
