import { apartM, type Point, pointBetween } from '../../geo/earth/point.ts';
import { crossing } from '../../geo/earth/segment.ts';
import type { RailMeeting, Tags } from '../plan/words.ts';
import { insert, type Line, markSpan, placeOn, type Vertex } from './lines/line.ts';
import { item } from './lines/plane.ts';

/** Settles every place where a newly laid line crosses an older one: a junction, a bridge, a culvert, a level crossing. */
export function meet(line: Line, other: Line): void {
  const how = wayOfMeeting(line, other);
  if (how === undefined) return;
  for (let guard = 0; guard < 400; guard++) {
    const hit = nextCrossing(line, other);
    if (hit === undefined) return;
    how(line, other, hit);
  }
  throw new Error(`${line.key} and ${other.key} cross without end`);
}

interface Hit {
  readonly at: Point;
  /** indices of the pieces' later vertices */
  readonly i: number;
  readonly j: number;
}

type Settle = (line: Line, other: Line, hit: Hit) => void;

/** Lines that cross others without touching them. */
const UNMET = new Set(['ferry', 'coast', 'trees']);

function wayOfMeeting(line: Line, other: Line): Settle | undefined {
  const pair = [line, other];
  if (pair.some((one) => UNMET.has(one.kind))) return undefined;
  const roads = pair.filter((one) => one.kind === 'road' || one.kind === 'path');
  if (roads.length === 2) return line.separate !== other.separate ? bridgeRoads : joinAt;
  const [road] = roads;
  if (road === undefined) return pair.some((one) => one.kind === 'rail') ? crossWater : flowInto;
  const rest = line === road ? other : line;
  return rest.kind === 'rail' ? meetRail : crossWater;
}

/** The first place where two lines cross in the same layer and without a vertex in common. */
function nextCrossing(line: Line, other: Line): Hit | undefined {
  for (let i = 1; i < line.pts.length; i++) {
    const a = item(line.pts, i - 1);
    const b = item(line.pts, i);
    const south = Math.min(a.y, b.y);
    const north = Math.max(a.y, b.y);
    const west = Math.min(a.x, b.x);
    const east = Math.max(a.x, b.x);
    for (let j = 1; j < other.pts.length; j++) {
      const c = item(other.pts, j - 1);
      const d = item(other.pts, j);
      if ((c.y < south && d.y < south) || (c.y > north && d.y > north)) continue;
      if ((c.x < west && d.x < west) || (c.x > east && d.x > east)) continue;
      if (a === c || a === d || b === c || b === d) continue;
      if (layerOf(line, i) !== layerOf(other, j)) continue;
      const hit = crossing(a, b, c, d);
      if (hit !== undefined) return { at: pointBetween(a, b, hit.t), i, j };
    }
  }
  return undefined;
}

function layerOf(line: Line, piece: number): string {
  return line.seg[piece - 1]?.['layer'] ?? line.tags['layer'] ?? '0';
}

/** Vertices this near to a crossing become it. Metres. */
const SAME_M = 4;

function joinAt(line: Line, other: Line, hit: Hit): void {
  const made: Vertex = { ...hit.at };
  const old = [item(other.pts, hit.j - 1), item(other.pts, hit.j)].find((v) => apartM(v, made) < SAME_M);
  const joint = old ?? made;
  joint.joined = true;
  if (line.pts.includes(joint)) {
    dropSwing(line, joint, hit);
    return;
  }
  if (old === undefined) insert(other, hit.j, joint);
  const mine = [hit.i - 1, hit.i].find((i) => apartM(item(line.pts, i), joint) < SAME_M);
  if (mine !== undefined && !item(line.pts, mine).joined) line.pts[mine] = joint;
  else insert(line, hit.i, joint);
}

/** The two have met right here already, and a vertex of ours swings across the other line: take it out. */
function dropSwing(line: Line, joint: Vertex, hit: Hit): void {
  const index = [hit.i - 1, hit.i].find((i) => {
    const v = item(line.pts, i);
    return v !== joint && !v.joined && i > 0 && i < line.pts.length - 1;
  });
  if (index === undefined) throw new Error(`${line.key} meets a line twice at one place`);
  line.pts.splice(index, 1);
  line.seg.splice(index, 1);
}

/** Half a bridge over both carriageways of a trunk road, and half of one over a smaller road. Metres. */
const LONG_HALF_M = 24;
const SHORT_HALF_M = 16;

function bridgeRoads(line: Line, other: Line, hit: Hit): void {
  const [apart, plain] = line.separate ? [line, other] : [other, line];
  if (plain.under) bridge(apart, hit.at, SHORT_HALF_M);
  else bridge(plain, hit.at, LONG_HALF_M, plain.bridge);
}

function bridge(line: Line, at: Point, half: number, tags: Tags = {}): void {
  const { metres } = placeOn(line, at);
  markSpan(line, metres - half, metres + half, { bridge: 'yes', layer: '1', ...tags });
}

/** A stream ends in the water it reaches. */
function flowInto(line: Line, other: Line, hit: Hit): void {
  joinAt(line, other, hit);
  const mouth = line.pts.findIndex((v) => other.pts.includes(v));
  line.pts.splice(mouth + 1);
  line.seg.splice(mouth);
}

function crossWater(line: Line, other: Line, hit: Hit): void {
  const water = [line, other].find((one) => one.kind === 'river' || one.kind === 'stream');
  const over = line === water ? other : line;
  if (water === undefined || over.kind === 'stream' || over.kind === 'river')
    throw new Error(`${line.key} and ${other.key} cannot cross`);
  if (over.ford !== undefined && water.kind === 'stream') {
    joinAt(line, other, hit);
    tagJoint(over, water, hit.at, over.ford);
    return;
  }
  if (water.kind === 'river') {
    bridge(over, hit.at, Number(water.tags['width'] ?? 16) / 2 + 5, over.kind === 'rail' ? {} : over.bridge);
    return;
  }
  const { metres } = placeOn(water, hit.at);
  const half = over.kind === 'rail' || over.separate ? 14 : 6;
  markSpan(water, metres - half, metres + half, { tunnel: 'culvert', layer: '-1' });
}

const LEVEL: RailMeeting = { how: 'level' };
const met = new WeakMap<Line, number>();

function meetRail(line: Line, other: Line, hit: Hit): void {
  const [rail, road] = line.kind === 'rail' ? [line, other] : [other, line];
  const count = met.get(road) ?? 0;
  met.set(road, count + 1);
  const meeting = road.separate
    ? { how: 'over' as const }
    : (road.rail?.[count] ?? road.rail?.at(-1) ?? LEVEL);
  if (meeting.how === 'over') {
    bridge(road, hit.at, SHORT_HALF_M, road.bridge);
    return;
  }
  if (meeting.how === 'arch') {
    bridge(rail, hit.at, 9);
    const { metres } = placeOn(road, hit.at);
    markSpan(road, metres - 10, metres + 10, meeting.tags ?? {});
    return;
  }
  joinAt(line, other, hit);
  const kind = road.kind === 'path' ? 'crossing' : 'level_crossing';
  tagJoint(road, rail, hit.at, { railway: kind, ...meeting.tags });
}

function tagJoint(line: Line, other: Line, at: Point, tags: Tags): void {
  const joint = line.pts.find((v) => other.pts.includes(v) && apartM(v, at) < SAME_M + 1);
  if (joint !== undefined) joint.tags = { ...joint.tags, ...tags };
}
