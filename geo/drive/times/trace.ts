import { distanceM } from '../../earth/sphere.ts';
import type { Roads } from '../../roads/roads.ts';
import type { Drive, OffMap, Stretch } from '../drive.ts';

/** A drive as one run of positions, with the leg that each piece between two positions belongs to. */
export interface DriveTrace {
  /** degrees, one per position */
  readonly lat: Float64Array;
  readonly lon: Float64Array;
  /** metres along the drive, never falling */
  readonly atM: Float64Array;
  /** index into Roads.nodes, -1 where no node stands */
  readonly node: Int32Array;
  /** index into Drive.legs of the piece from position i to i + 1; one shorter than the rest */
  readonly leg: Int32Array;
}

interface Points {
  lat: number[];
  lon: number[];
  atM: number[];
  node: number[];
  leg: number[];
}

/** Every position of a drive in driving order: the nodes of its roads and the route's own points off the map. */
export function traceDrive(drive: Drive, roads: Roads): DriveTrace {
  const points: Points = { lat: [], lon: [], atM: [], node: [], leg: [] };
  for (const [index, leg] of drive.legs.entries()) {
    if (leg.kind === 'stretch') addStretch(points, roads, leg, index);
    else if (leg.kind === 'offMap') addOffMap(points, leg, index);
    else push(points, leg.to.lat, leg.to.lon, leg.atM, -1, index);
  }
  return {
    lat: Float64Array.from(points.lat),
    lon: Float64Array.from(points.lon),
    atM: Float64Array.from(points.atM),
    node: Int32Array.from(points.node),
    leg: Int32Array.from(points.leg),
  };
}

/** Metres along a way up to each of its refs, in drawn order; the last is its length. */
export function wayAlongM(roads: Roads, way: number): Float64Array {
  const { start, refs } = roads.ways;
  const first = start[way]!;
  const count = start[way + 1]! - first;
  const along = new Float64Array(count);
  const { lat, lon } = roads.nodes;
  for (let i = 1; i < count; i++) {
    const a = refs[first + i - 1]!;
    const b = refs[first + i]!;
    along[i] = along[i - 1]! + distanceM(lat[a]!, lon[a]!, lat[b]!, lon[b]!);
  }
  return along;
}

function addStretch(points: Points, roads: Roads, stretch: Stretch, leg: number): void {
  const along = wayAlongM(roads, stretch.way);
  const first = roads.ways.start[stretch.way]!;
  const { alongFromM, alongToM, fromM, toM } = stretch;
  const span = Math.abs(alongToM - alongFromM);
  const scale = span > 0 ? (toM - fromM) / span : 0;
  const low = Math.min(alongFromM, alongToM);
  const high = Math.max(alongFromM, alongToM);
  addBetween(points, roads, first, along, alongFromM, fromM, leg);
  const step = stretch.forward ? 1 : -1;
  for (let i = stretch.forward ? 0 : along.length - 1; i >= 0 && i < along.length; i += step) {
    const m = along[i]!;
    if (m <= low + TOUCH_M || m >= high - TOUCH_M) continue;
    const node = roads.ways.refs[first + i]!;
    const atM = fromM + Math.abs(m - alongFromM) * scale;
    add(points, roads.nodes.lat[node]!, roads.nodes.lon[node]!, atM, node, leg);
  }
  addBetween(points, roads, first, along, alongToM, toM, leg);
}

/** Within this of a node, a stretch begins or ends at the node. */
const TOUCH_M = 0.01;

/** The place `m` metres along a way: one of its nodes, or between two. */
function addBetween(
  points: Points,
  roads: Roads,
  first: number,
  along: Float64Array,
  m: number,
  atM: number,
  leg: number,
): void {
  const { lat, lon } = roads.nodes;
  const after = along.findIndex((value) => value >= m - TOUCH_M);
  const at = after < 0 ? along.length - 1 : after;
  const node = roads.ways.refs[first + at]!;
  const toNode = along[at]! - m;
  if (at === 0 || Math.abs(toNode) <= TOUCH_M || after < 0) {
    add(points, lat[node]!, lon[node]!, atM, node, leg);
    return;
  }
  const before = roads.ways.refs[first + at - 1]!;
  const length = along[at]! - along[at - 1]!;
  const t = length > 0 ? 1 - toNode / length : 1;
  const between = (a: number, b: number) => a + (b - a) * t;
  add(points, between(lat[before]!, lat[node]!), between(lon[before]!, lon[node]!), atM, -1, leg);
}

function addOffMap(points: Points, off: OffMap, leg: number): void {
  const count = Math.min(off.lat.length, off.lon.length);
  const along = [0];
  for (let i = 1; i < count; i++)
    along.push(along[i - 1]! + distanceM(off.lat[i - 1]!, off.lon[i - 1]!, off.lat[i]!, off.lon[i]!));
  const total = along.at(-1) ?? 0;
  const scale = total > 0 ? (off.toM - off.fromM) / total : 0;
  for (let i = 0; i < count; i++)
    add(points, off.lat[i]!, off.lon[i]!, i === count - 1 ? off.toM : off.fromM + along[i]! * scale, -1, leg);
}

/** Adds a position; one that repeats the last, where two stretches meet, is that one. */
function add(points: Points, lat: number, lon: number, atM: number, node: number, leg: number): void {
  const last = points.atM.length - 1;
  if (last >= 0 && atM - points.atM[last]! <= 1e-6) {
    if (node >= 0) points.node[last] = node;
    return;
  }
  push(points, lat, lon, atM, node, leg);
}

function push(points: Points, lat: number, lon: number, atM: number, node: number, leg: number): void {
  if (points.atM.length > 0) points.leg.push(leg);
  points.lat.push(lat);
  points.lon.push(lon);
  points.atM.push(atM);
  points.node.push(node);
}
