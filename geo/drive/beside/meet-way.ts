import { meet } from '../../earth/plane.ts';
import { localFrame } from '../../earth/sphere.ts';
import type { Roads, SegmentRef } from '../../roads/roads.ts';
import type { DrivenSegment } from './driven-line.ts';

/** Segments of other ways whose box meets the driven segment's. */
export function segmentsNear(roads: Roads, segment: DrivenSegment, kind: 'driven' | 'around'): SegmentRef[] {
  return roads.index.inBox(
    Math.min(segment.lat1, segment.lat2),
    Math.min(segment.lon1, segment.lon2),
    Math.max(segment.lat1, segment.lat2),
    Math.max(segment.lon1, segment.lon2),
    kind,
  );
}

/** Where along the drive, in metres, the driven segment crosses the other; undefined when it does not. */
export function crossingM(roads: Roads, segment: DrivenSegment, ref: SegmentRef): number | undefined {
  const first = roads.ways.start[ref.way]! + ref.seg;
  const { toXY } = localFrame(segment.lat1, segment.lon1);
  const xy = (at: number) => {
    const node = roads.ways.refs[at]!;
    return toXY(roads.nodes.lat[node]!, roads.nodes.lon[node]!);
  };
  const met = meet({ x: 0, y: 0 }, toXY(segment.lat2, segment.lon2), xy(first), xy(first + 1));
  return met === undefined ? undefined : segment.fromM + met.t * (segment.toM - segment.fromM);
}

/** Whether the driven segment and the other have a node in common: then they meet, and do not cross. */
export function sharesNode(roads: Roads, { node1, node2 }: DrivenSegment, ref: SegmentRef): boolean {
  const first = roads.ways.start[ref.way]! + ref.seg;
  const c = roads.ways.refs[first]!;
  const d = roads.ways.refs[first + 1]!;
  return c === node1 || c === node2 || d === node1 || d === node2;
}
