import { distanceM } from '../earth/sphere.ts';
import { type Roads, WAY_KIND } from '../roads/roads.ts';
import type { Driven } from '../tags/driven.ts';
import { onewayFor } from '../tags/oneway.ts';
import { roadClass } from './road-class.ts';

/**
 * Roads cut at their junctions. An edge is the part of one way between two junctions (nodes that several driven ways,
 * or one way twice, pass; ends of ways). Ways join by node alone: two lines that cross without a common node do not
 * meet.
 *
 * Directed edge `2 * e` follows the drawn order of edge e, `2 * e + 1` runs against it, so `d ^ 1` turns round.
 * A ref is an index into Roads.ways.refs.
 */
export interface RoadEdges {
  readonly edgeCount: number;
  /** by edge: index into Roads.ways */
  readonly way: Int32Array;
  /** by edge: first and last ref */
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
  /** by ref: metres along its way */
  readonly alongM: Float64Array;
  /** by ref: the edge of the segment that starts there; -1 when none does */
  readonly edgeOfSegment: Int32Array;
  /** directed edges that leave node n: out[outStart[n] .. outStart[n + 1]) */
  readonly outStart: Uint32Array;
  readonly out: Int32Array;
}

/** Cuts all driven ways into edges, at further nodes too where they are named; linear in the map. */
export function cutIntoEdges(roads: Roads, alsoAt: Iterable<number> = []): RoadEdges {
  const cut = cutWays(roads, alsoAt);
  return joinAtNodes(roads, cut, edgeRules(roads, cut.way));
}

/** The same cut at further nodes too, what was read off the tags taken over. */
export function cutFurther(roads: Roads, edges: RoadEdges, alsoAt: Iterable<number>): RoadEdges {
  const cut = cutWays(roads, alsoAt);
  const roadClass = new Uint8Array(cut.edgeCount);
  const wrongWay = new Uint8Array(2 * cut.edgeCount);
  for (let edge = 0; edge < cut.edgeCount; edge++) {
    const whole = edges.edgeOfSegment[cut.firstRef[edge]!]!;
    roadClass[edge] = edges.roadClass[whole]!;
    wrongWay[2 * edge] = edges.wrongWay[2 * whole]!;
    wrongWay[2 * edge + 1] = edges.wrongWay[2 * whole + 1]!;
  }
  return joinAtNodes(roads, cut, { roadClass, wrongWay });
}

function joinAtNodes(
  roads: Roads,
  cut: CutWays,
  rules: Pick<RoadEdges, 'roadClass' | 'wrongWay'>,
): RoadEdges {
  const ends = edgeEnds(roads, cut);
  return { ...cut, ...ends, ...rules, ...groupByTail(ends.tail, roads.nodes.count) };
}

type CutWays = Pick<
  RoadEdges,
  'edgeCount' | 'way' | 'firstRef' | 'lastRef' | 'lengthM' | 'alongM' | 'edgeOfSegment'
>;

function cutWays(roads: Roads, alsoAt: Iterable<number>): CutWays {
  const { count, start, refs, kind } = roads.ways;
  const { lat, lon } = roads.nodes;
  const junction = findJunctions(roads);
  for (const node of alsoAt) junction[node] = 1;
  const alongM = new Float64Array(refs.length);
  const edgeOfSegment = new Int32Array(refs.length).fill(-1);
  const [wayOf, firstRef, lastRef] = [0, 1, 2].map(() => new Int32Array(refs.length)) as Triple<Int32Array>;
  let edgeCount = 0;
  for (let way = 0; way < count; way++) {
    if (kind[way] === WAY_KIND.around) continue;
    const begin = start[way]!;
    const end = start[way + 1]! - 1;
    let first = begin;
    for (let at = begin + 1; at <= end; at++) {
      const a = refs[at - 1]!;
      const b = refs[at]!;
      alongM[at] = alongM[at - 1]! + distanceM(lat[a]!, lon[a]!, lat[b]!, lon[b]!);
      edgeOfSegment[at - 1] = edgeCount;
      if (at < end && junction[b]! < 1) continue;
      wayOf[edgeCount] = way;
      firstRef[edgeCount] = first;
      lastRef[edgeCount] = at;
      edgeCount++;
      first = at;
    }
  }
  const lengthM = new Float64Array(edgeCount);
  for (let edge = 0; edge < edgeCount; edge++)
    lengthM[edge] = alongM[lastRef[edge]!]! - alongM[firstRef[edge]!]!;
  return {
    edgeCount,
    way: wayOf.slice(0, edgeCount),
    firstRef: firstRef.slice(0, edgeCount),
    lastRef: lastRef.slice(0, edgeCount),
    lengthM,
    alongM,
    edgeOfSegment,
  };
}

type Triple<T> = [T, T, T];

/** 1 for every node that driven ways pass more than once. */
function findJunctions(roads: Roads): Uint8Array {
  const { count, start, refs, kind } = roads.ways;
  const passed = new Uint8Array(roads.nodes.count);
  const junction = new Uint8Array(roads.nodes.count);
  for (let way = 0; way < count; way++) {
    if (kind[way] === WAY_KIND.around) continue;
    for (let at = start[way]!; at < start[way + 1]!; at++) {
      const node = refs[at]!;
      if (passed[node] === 1) junction[node] = 1;
      passed[node] = 1;
    }
  }
  return junction;
}

function edgeEnds(roads: Roads, { edgeCount, firstRef, lastRef }: CutWays): Pick<RoadEdges, 'tail' | 'head'> {
  const tail = new Int32Array(2 * edgeCount);
  const head = new Int32Array(2 * edgeCount);
  for (let edge = 0; edge < edgeCount; edge++) {
    const from = roads.ways.refs[firstRef[edge]!]!;
    const to = roads.ways.refs[lastRef[edge]!]!;
    tail[2 * edge] = from;
    head[2 * edge] = to;
    tail[2 * edge + 1] = to;
    head[2 * edge + 1] = from;
  }
  return { tail, head };
}

function edgeRules(roads: Roads, wayOf: Int32Array): Pick<RoadEdges, 'roadClass' | 'wrongWay'> {
  const { kind, tags } = roads.ways;
  const classes = new Uint8Array(wayOf.length);
  const wrongWay = new Uint8Array(2 * wayOf.length);
  for (let edge = 0; edge < wayOf.length; edge++) {
    const way = wayOf[edge]!;
    if (edge > 0 && wayOf[edge - 1] === way) {
      // edges of one way follow each other
      classes[edge] = classes[edge - 1]!;
      wrongWay[2 * edge] = wrongWay[2 * edge - 2]!;
      wrongWay[2 * edge + 1] = wrongWay[2 * edge - 1]!;
      continue;
    }
    const wayTags = tags[way] ?? {};
    classes[edge] = roadClass(kind[way]!, wayTags);
    if (runsAgainst({ tags: wayTags, forward: true })) wrongWay[2 * edge] = 1;
    if (runsAgainst({ tags: wayTags, forward: false })) wrongWay[2 * edge + 1] = 1;
  }
  return { roadClass: classes, wrongWay };
}

/** Whether a direction is against a one-way, the probable ones (a motorway's link) included: it only guides. */
function runsAgainst(driven: Driven): boolean {
  const { allowed, key } = onewayFor(driven);
  return allowed === 'no' || (allowed === 'unsure' && (key === 'highway' || key === 'junction'));
}

function groupByTail(tail: Int32Array, nodeCount: number): Pick<RoadEdges, 'outStart' | 'out'> {
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
