import { type LocalFrame, localFrame } from '../../earth/frame.ts';
import type { Point } from '../../earth/point.ts';
import { crossing } from '../../earth/segment.ts';
import type { Roads, SegmentRef } from '../../roads/roads.ts';
import type { DrivenSegment } from './driven-line.ts';

/** Segments of other ways whose box meets the driven segment's, widened by so many metres. */
export function segmentsNear(
  roads: Roads,
  segment: DrivenSegment,
  kind: 'driven' | 'around',
  reachM = 0,
): SegmentRef[] {
  const { lat1, lon1, lat2, lon2 } = segment;
  const frame = localFrame(lat1, lon1);
  const dLat = reachM / frame.metresPerDegLat;
  const dLon = reachM / frame.metresPerDegLon;
  return roads.index.inBox(
    Math.min(lat1, lat2) - dLat,
    Math.min(lon1, lon2) - dLon,
    Math.max(lat1, lat2) + dLat,
    Math.max(lon1, lon2) + dLon,
    kind,
  );
}

/** The two ends of a way's segment in a flat frame. */
export function endsOf(roads: Roads, { way, seg }: SegmentRef, frame: LocalFrame): readonly [Point, Point] {
  const first = roads.ways.start[way]! + seg;
  const place = (at: number) => {
    const node = roads.ways.refs[at]!;
    return frame.toXY(roads.nodes.lat[node]!, roads.nodes.lon[node]!);
  };
  return [place(first), place(first + 1)];
}

/** Where along the drive, in metres, the driven segment crosses the other; undefined when it does not. */
export function crossingM(roads: Roads, segment: DrivenSegment, ref: SegmentRef): number | undefined {
  const frame = localFrame(segment.lat1, segment.lon1);
  const end = frame.toXY(segment.lat2, segment.lon2);
  const met = crossing({ x: 0, y: 0 }, end, ...endsOf(roads, ref, frame));
  return met === undefined ? undefined : segment.fromM + met.t * (segment.toM - segment.fromM);
}

/** Whether the driven segment and the other have a node in common: then they meet, and do not cross. */
export function sharesNode(roads: Roads, { node1, node2 }: DrivenSegment, ref: SegmentRef): boolean {
  const first = roads.ways.start[ref.way]! + ref.seg;
  const c = roads.ways.refs[first]!;
  const d = roads.ways.refs[first + 1]!;
  return c === node1 || c === node2 || d === node1 || d === node2;
}
