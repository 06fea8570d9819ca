import { clockwiseDeg, turnDeg } from '../../earth/angles.ts';
import { bearingDeg } from '../../earth/sphere.ts';
import { append } from '../../lists.ts';
import type { Roads } from '../../roads/roads.ts';
import { RANK, rankOf } from '../../tags/road-class.ts';
import type { PassedNode } from '../nodes-along.ts';
import type { DriveTrace } from '../times/trace.ts';
import type { Strip } from './strip.ts';

type Stub = Strip['stubs'][number];

const NOT_DRAWN = new Set(['footway', 'cycleway', 'path', 'steps', 'bridleway', 'corridor', 'platform']);
const SAME_PLACE_M = 1;
/** A road that leaves within this angle of the driven one, ahead or behind, is taken for that road. Degrees. */
const SAME_WAY_DEG = 15;

/** Side roads that join at nodes passed: on which side they leave. */
export function sideRoads(passed: readonly PassedNode[], trace: DriveTrace, roads: Roads): Stub[] {
  const { node, atM } = trace;
  const stubs: Stub[] = [];
  let at = 0;
  for (const here of passed) {
    while (at < node.length - 1 && atM[at]! < here.atM - SAME_PLACE_M) at++;
    at = positionOf(trace, here, at);
    const before = node[at - 1] ?? -1;
    const after = node[at + 1] ?? -1;
    if (node[at] !== here.node || before < 0 || after < 0 || before === after) continue;
    append(stubs, stubsAt(roads, { ...here, before, after }));
  }
  return stubs;
}

/** The trace's position at a node, looked for from `from` on; the two say the same drive, but one may lack a node. */
function positionOf({ node, atM }: DriveTrace, here: PassedNode, from: number): number {
  for (let i = from; i < node.length && atM[i]! <= here.atM + SAME_PLACE_M; i++)
    if (node[i] === here.node) return i;
  return from;
}

/** A node passed, and the nodes that the drive comes from and goes on to. */
interface Passing {
  readonly node: number;
  readonly atM: number;
  readonly before: number;
  readonly after: number;
}

function stubsAt(roads: Roads, { node, atM, before, after }: Passing): Stub[] {
  const bearingTo = bearingsFrom(roads, node);
  const ahead = bearingTo(after);
  const behind = bearingTo(before);
  const stubs: Stub[] = [];
  for (const [other, highway] of roadsAt(roads, node)) {
    if (other === before || other === after) continue;
    const out = bearingTo(other);
    if (turnDeg(out, ahead) < SAME_WAY_DEG || turnDeg(out, behind) < SAME_WAY_DEG) continue;
    const side = clockwiseDeg(ahead, out) < clockwiseDeg(ahead, behind) ? 'right' : 'left';
    stubs.push({ atM, side, main: rankOf(highway) <= RANK.secondary });
  }
  return stubs;
}

function bearingsFrom({ nodes }: Roads, node: number): (other: number) => number {
  return (other) => bearingDeg(nodes.lat[node]!, nodes.lon[node]!, nodes.lat[other]!, nodes.lon[other]!);
}

/** The roads that meet at a node: the next node along each, with its class. */
function roadsAt({ nodes, ways, index }: Roads, node: number): ReadonlyMap<number, string> {
  const [lat, lon] = [nodes.lat[node]!, nodes.lon[node]!];
  const found = new Map<number, string>();
  for (const { way, seg } of index.inBox(lat, lon, lat, lon, 'driven')) {
    const highway = ways.tags[way]?.['highway'];
    const ref = ways.start[way]! + seg;
    const [a, b] = [ways.refs[ref]!, ways.refs[ref + 1]!];
    const other = a === node ? b : a;
    if (highway === undefined || NOT_DRAWN.has(highway) || (a !== node && b !== node)) continue;
    if (!found.has(other)) found.set(other, highway);
  }
  return found;
}
