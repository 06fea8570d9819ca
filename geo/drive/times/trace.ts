import { distanceM, type Place } from '../../earth/sphere.ts';
import { wayAlong } from '../../graph/road-graph.ts';
import { lastOrZero } from '../../lists.ts';
import type { Roads } from '../../roads/roads.ts';
import type { Drive, OffMap, Stretch } from '../drive.ts';

/** A drive as one row of positions; step i leads from position i to i + 1. */
export interface DriveTrace {
  /** degrees, one per position */
  readonly lat: Float64Array;
  readonly lon: Float64Array;
  /** metres along the drive, never falling */
  readonly atM: Float64Array;
  /** index into Roads.nodes, -1 where no node stands */
  readonly node: Int32Array;
  /** by step: index into Drive.legs; one shorter than the rest */
  readonly leg: Int32Array;
}

/** A trace as it grows. */
interface Growing {
  readonly lat: number[];
  readonly lon: number[];
  readonly atM: number[];
  readonly node: number[];
  readonly leg: number[];
}

/** Where one position stands; `node` is -1 where no node does. */
interface Stand extends Place {
  readonly node: number;
}

/** Every position of a drive in driving order: the nodes of its roads and the route's own points off the map. */
export function traceDrive(drive: Drive, roads: Roads): DriveTrace {
  const growing: Growing = { lat: [], lon: [], atM: [], node: [], leg: [] };
  for (const [index, leg] of drive.legs.entries()) {
    if (leg.kind === 'stretch') addStretch(growing, roads, leg, index);
    else if (leg.kind === 'offMap') addOffMap(growing, leg, index);
    else push(growing, { ...leg.to, node: -1 }, leg.atM, index);
  }
  return {
    lat: Float64Array.from(growing.lat),
    lon: Float64Array.from(growing.lon),
    atM: Float64Array.from(growing.atM),
    node: Int32Array.from(growing.node),
    leg: Int32Array.from(growing.leg),
  };
}

/** Within this of a node, a stretch begins or ends at the node. */
const TOUCH_M = 0.01;

function addStretch(growing: Growing, roads: Roads, stretch: Stretch, leg: number): void {
  const { way, forward, alongFromM, alongToM, fromM, toM } = stretch;
  const along = wayAlong(roads, way);
  const first = roads.ways.start[way]!;
  const spanM = Math.abs(alongToM - alongFromM);
  const scale = spanM > 0 ? (toM - fromM) / spanM : 0;
  const low = Math.min(alongFromM, alongToM);
  const high = Math.max(alongFromM, alongToM);
  add(growing, standAt(roads, way, alongFromM), fromM, leg);
  const by = forward ? 1 : -1;
  for (let i = forward ? 0 : along.length - 1; i >= 0 && i < along.length; i += by) {
    const m = along[i]!;
    if (m <= low + TOUCH_M || m >= high - TOUCH_M) continue;
    add(growing, standOn(roads, roads.ways.refs[first + i]!), fromM + Math.abs(m - alongFromM) * scale, leg);
  }
  add(growing, standAt(roads, way, alongToM), toM, leg);
}

function standOn({ nodes }: Roads, node: number): Stand {
  return { lat: nodes.lat[node]!, lon: nodes.lon[node]!, node };
}

/** The place so many metres along a way: one of its nodes, or between two. */
function standAt(roads: Roads, way: number, alongM: number): Stand {
  const along = wayAlong(roads, way);
  const first = roads.ways.start[way]!;
  const after = along.findIndex((value) => value >= alongM - TOUCH_M);
  const at = after < 0 ? along.length - 1 : after;
  const next = standOn(roads, roads.ways.refs[first + at]!);
  const toNodeM = along[at]! - alongM;
  if (at === 0 || Math.abs(toNodeM) <= TOUCH_M || after < 0) return next;
  const before = standOn(roads, roads.ways.refs[first + at - 1]!);
  const lengthM = along[at]! - along[at - 1]!;
  const t = lengthM > 0 ? 1 - toNodeM / lengthM : 1;
  const between = (a: number, b: number) => a + (b - a) * t;
  return { lat: between(before.lat, next.lat), lon: between(before.lon, next.lon), node: -1 };
}

function addOffMap(growing: Growing, off: OffMap, leg: number): void {
  const count = Math.min(off.lat.length, off.lon.length);
  const along = [0];
  for (let i = 1; i < count; i++)
    along.push(along[i - 1]! + distanceM(off.lat[i - 1]!, off.lon[i - 1]!, off.lat[i]!, off.lon[i]!));
  const total = lastOrZero(along);
  const scale = total > 0 ? (off.toM - off.fromM) / total : 0;
  for (let i = 0; i < count; i++) {
    const atM = i === count - 1 ? off.toM : off.fromM + along[i]! * scale;
    add(growing, { lat: off.lat[i]!, lon: off.lon[i]!, node: -1 }, atM, leg);
  }
}

/** Adds a position; one that repeats the last, where two stretches meet, is that one. */
function add(growing: Growing, stand: Stand, atM: number, leg: number): void {
  const last = growing.atM.length - 1;
  if (last < 0 || atM - growing.atM[last]! > 1e-6) push(growing, stand, atM, leg);
  else if (stand.node >= 0) growing.node[last] = stand.node;
}

function push(growing: Growing, { lat, lon, node }: Stand, atM: number, leg: number): void {
  if (growing.atM.length > 0) growing.leg.push(leg);
  growing.lat.push(lat);
  growing.lon.push(lon);
  growing.atM.push(atM);
  growing.node.push(node);
}
