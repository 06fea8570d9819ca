import { distanceM } from '../../../earth/sphere.ts';
import type { Roads, Tags } from '../../../roads/roads.ts';
import { WAY_KIND, type WayKind } from '../../../roads/roads.ts';
import { onewayFor } from '../../../tags/oneway.ts';
import { roadClass } from './road-class.ts';
import { type ForbiddenTurns, findForbiddenTurns } from './turns.ts';

/**
 * Roads as a graph. An edge is the run of one way between two junctions (nodes that several driven ways, or one
 * way twice, pass; ends of ways). Ways join by node alone: two lines that cross without a common node do not meet.
 *
 * Directed edge `2 * e` follows the drawn order of edge e, `2 * e + 1` runs against it, so `d ^ 1` turns round.
 */
export interface RoadGraph {
  readonly edgeCount: number;
  /** by edge: index into Roads.ways */
  readonly way: Int32Array;
  /** by edge: first and last place in Roads.ways.refs */
  readonly firstRef: Int32Array;
  readonly lastRef: Int32Array;
  readonly lengthM: Float64Array;
  /** by directed edge: node indices */
  readonly tail: Int32Array;
  readonly head: Int32Array;
  /** by edge: a ROAD_CLASS */
  readonly roadClass: Uint8Array;
  /** by directed edge: 1 where it runs against a one-way */
  readonly wrongWay: Uint8Array;
  /** by place in Roads.ways.refs: metres along its way */
  readonly alongM: Float64Array;
  /** by place in Roads.ways.refs: the edge of the segment that starts there; -1 when none does */
  readonly edgeOfSegment: Int32Array;
  /** directed edges that leave node n: out[outStart[n] .. outStart[n + 1]) */
  readonly outStart: Uint32Array;
  readonly out: Int32Array;
  readonly forbidden: ForbiddenTurns;
}

const built = new WeakMap<Roads, RoadGraph>();

/** The graph of these roads, built at the first call and kept as long as the roads are. */
export function roadGraph(roads: Roads): RoadGraph {
  const known = built.get(roads);
  if (known !== undefined) return known;
  const graph = buildGraph(roads);
  built.set(roads, graph);
  return graph;
}

/** Metres along a way at each of its refs; a view, not a copy. */
export function wayAlong(roads: Roads, way: number): Float64Array {
  const { start } = roads.ways;
  return roadGraph(roads).alongM.subarray(start[way], start[way + 1]);
}

function buildGraph(roads: Roads): RoadGraph {
  const { count, start, refs, kind, tags } = roads.ways;
  const { lat, lon } = roads.nodes;
  const junction = findJunctions(roads);
  const alongM = new Float64Array(refs.length);
  const edgeOfSegment = new Int32Array(refs.length).fill(-1);
  const edges: { way: number; first: number; last: number }[] = [];
  for (let way = 0; way < count; way++) {
    if (kind[way] === WAY_KIND.around) continue;
    const begin = start[way]!;
    const end = start[way + 1]! - 1;
    let first = begin;
    for (let at = begin + 1; at <= end; at++) {
      const a = refs[at - 1]!;
      const b = refs[at]!;
      alongM[at] = alongM[at - 1]! + distanceM(lat[a]!, lon[a]!, lat[b]!, lon[b]!);
      edgeOfSegment[at - 1] = edges.length;
      if (at < end && junction[b] !== 1) continue;
      edges.push({ way, first, last: at });
      first = at;
    }
  }

  const edgeCount = edges.length;
  const shape = {
    edgeCount,
    way: Int32Array.from(edges, (edge) => edge.way),
    firstRef: Int32Array.from(edges, (edge) => edge.first),
    lastRef: Int32Array.from(edges, (edge) => edge.last),
    lengthM: Float64Array.from(edges, (edge) => alongM[edge.last]! - alongM[edge.first]!),
    tail: new Int32Array(2 * edgeCount),
    head: new Int32Array(2 * edgeCount),
    roadClass: new Uint8Array(edgeCount),
    wrongWay: new Uint8Array(2 * edgeCount),
  };
  edges.forEach((edge, e) => {
    const wayTags = tags[edge.way] ?? {};
    const from = refs[edge.first]!;
    const to = refs[edge.last]!;
    shape.tail[2 * e] = from;
    shape.head[2 * e] = to;
    shape.tail[2 * e + 1] = to;
    shape.head[2 * e + 1] = from;
    shape.roadClass[e] = roadClass(kind[edge.way] as WayKind, wayTags);
    if (runsAgainst(wayTags, true)) shape.wrongWay[2 * e] = 1;
    if (runsAgainst(wayTags, false)) shape.wrongWay[2 * e + 1] = 1;
  });
  const { outStart, out } = groupByTail(shape.tail, roads.nodes.count);
  const forbidden = findForbiddenTurns(roads, { way: shape.way, head: shape.head, outStart, out });
  return { ...shape, alongM, edgeOfSegment, outStart, out, forbidden };
}

/** Whether a direction is against a one-way, the probable ones (a motorway's link) included: it only guides. */
function runsAgainst(wayTags: Tags, forward: boolean): boolean {
  const { allowed, key } = onewayFor(wayTags, forward);
  return allowed === 'no' || (allowed === 'unsure' && (key === 'highway' || key === 'junction'));
}

/** 1 for every node that driven ways pass more than once. */
function findJunctions(roads: Roads): Uint8Array {
  const { count, start, refs, kind } = roads.ways;
  const passes = new Uint8Array(roads.nodes.count);
  for (let way = 0; way < count; way++) {
    if (kind[way] === WAY_KIND.around) continue;
    for (let at = start[way]!; at < start[way + 1]!; at++) {
      const node = refs[at]!;
      if (passes[node]! < 2) passes[node] = passes[node]! + 1;
    }
  }
  return passes.map((times) => (times > 1 ? 1 : 0));
}

function groupByTail(tail: Int32Array, nodeCount: number): Pick<RoadGraph, 'outStart' | 'out'> {
  const outStart = new Uint32Array(nodeCount + 1);
  for (const node of tail) outStart[node + 1] = outStart[node + 1]! + 1;
  for (let node = 0; node < nodeCount; node++) outStart[node + 1] = outStart[node + 1]! + outStart[node]!;
  const next = outStart.slice();
  const out = new Int32Array(tail.length);
  tail.forEach((node, directed) => {
    out[next[node]!] = directed;
    next[node] = next[node]! + 1;
  });
  return { outStart, out };
}
