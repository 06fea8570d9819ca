import type { Route } from '../../geo/drive/gpx/route.ts';
import { localFrame } from '../../geo/earth/frame.ts';
import { alongWay, placeOnEdge, refBefore } from '../../geo/graph/place-on-edge.ts';
import { isForOthers, ROAD_CLASS } from '../../geo/graph/road-class.ts';
import { type RoadGraph, roadGraph } from '../../geo/graph/road-graph.ts';
import { searchRoads, wayTo } from '../../geo/graph/search-roads.ts';
import type { Roads } from '../../geo/roads/roads.ts';

/** A drive whose roads are known: what is driven of which directed edge, in order. */
export interface KnownDrive {
  readonly pieces: readonly { readonly directed: number; readonly fromM: number; readonly toM: number }[];
  readonly lengthM: number;
  readonly lat: readonly number[];
  readonly lon: readonly number[];
}

/** Numbers in [0, 1), the same for the same seed (mulberry32). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const NEVER_M = 1e9;
const LEGAL = {
  turnBackM: NEVER_M,
  forbiddenTurnM: NEVER_M,
  enterWrongWayM: NEVER_M,
  wrongWayPerM: NEVER_M,
  classPerM: [] as number[],
};
LEGAL.classPerM[ROAD_CLASS.path] = NEVER_M;
LEGAL.classPerM[ROAD_CLASS.closed] = NEVER_M;

/**
 * A random drive along legal directions: shortest ways between random places, none turning back, of about the length
 * asked for; undefined when chance led to a corner of the map with no way on.
 */
export function randomDrive(roads: Roads, lengthM: number, random: () => number): KnownDrive | undefined {
  const graph = roadGraph(roads);
  const legal = (directed: number) =>
    graph.wrongWay[directed] === 0 && !isForOthers(graph.roadClass[directed >> 1]!);
  const start = Math.floor(random() * 2 * graph.edgeCount);
  if (!legal(start) || graph.roadClass[start >> 1] === ROAD_CLASS.ferry) return undefined;
  const chain = [start];
  const startM = random() * lengthOf(graph, start);
  let drivenM = lengthOf(graph, start) - startM;
  while (drivenM < lengthM) {
    const from = chain.at(-1) as number;
    const reached = searchRoads(graph, LEGAL, [{ directed: from, costM: 0, metres: 0 }], {
      limitM: Math.min(6000, Math.max(500, lengthM / 3)),
    });
    const open: number[] = [];
    reached.directed.forEach((directed, at) => {
      if (legal(directed) && reached.costM[at]! > 100 && leadsOn(graph, directed, legal)) open.push(at);
    });
    if (open.length === 0) return undefined;
    const at = open[Math.floor(random() * open.length)]!;
    const edges = [...wayTo(reached, at).edges, reached.directed[at]!];
    for (const edge of edges) {
      chain.push(edge);
      drivenM += lengthOf(graph, edge);
      if (drivenM >= lengthM) break;
    }
  }
  const last = chain.at(-1) as number;
  const pieces = chain.map((directed, i) => ({
    directed,
    fromM: i === 0 ? startM : 0,
    toM:
      i === chain.length - 1 && i > 0
        ? (0.2 + 0.8 * random()) * lengthOf(graph, last)
        : lengthOf(graph, directed),
  }));
  return { pieces, ...lineOf(roads, graph, pieces) };
}

/** The drive along whole directed edges. */
export function knownDrive(roads: Roads, edges: readonly number[]): KnownDrive {
  const graph = roadGraph(roads);
  const pieces = edges.map((directed) => ({ directed, fromM: 0, toM: lengthOf(graph, directed) }));
  return { pieces, ...lineOf(roads, graph, pieces) };
}

/** Not a dead end: some other legal edge leaves its head. */
function leadsOn(graph: RoadGraph, directed: number, legal: (directed: number) => boolean): boolean {
  const node = graph.head[directed]!;
  for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++) {
    const next = graph.out[i]!;
    if (next !== (directed ^ 1) && legal(next)) return true;
  }
  return false;
}

function lengthOf(graph: RoadGraph, directed: number): number {
  return graph.lengthM[directed >> 1]!;
}

function lineOf(roads: Roads, graph: RoadGraph, pieces: KnownDrive['pieces']) {
  const lat: number[] = [];
  const lon: number[] = [];
  let lengthM = 0;
  for (const { directed, fromM, toM } of pieces) {
    lengthM += toM - fromM;
    if (lat.length === 0) {
      const place = placeOnEdge(roads, graph, directed, fromM);
      lat.push(place.lat);
      lon.push(place.lon);
    }
    const way = graph.way[directed >> 1]!;
    const a = alongWay(graph, directed, fromM);
    const b = alongWay(graph, directed, toM);
    const low = refBefore(roads, graph, way, Math.min(a, b));
    const high = refBefore(roads, graph, way, Math.max(a, b));
    const refs: number[] = [];
    for (let ref = low; ref <= high + 1; ref++) {
      const alongM = graph.alongM[ref]!;
      if (alongM > Math.min(a, b) && alongM < Math.max(a, b)) refs.push(ref);
    }
    if (b < a) refs.reverse();
    for (const ref of refs) {
      const node = roads.ways.refs[ref]!;
      lat.push(roads.nodes.lat[node]!);
      lon.push(roads.nodes.lon[node]!);
    }
    const place = placeOnEdge(roads, graph, directed, toM);
    lat.push(place.lat);
    lon.push(place.lon);
  }
  return { lat, lon, lengthM };
}

/** A track without times through the given places, written to five decimals as programs export it. */
export function trackOf(line: { readonly lat: readonly number[]; readonly lon: readonly number[] }): Route {
  const round = (values: readonly number[]) =>
    Float64Array.from(values, (value) => Math.round(value * 1e5) / 1e5);
  const lat = round(line.lat);
  return {
    name: 'known drive',
    kind: 'track',
    number: 1,
    segments: [{ lat, lon: round(line.lon), timeMs: new Float64Array(lat.length).fill(Number.NaN) }],
  };
}

/** The line simplified so that no vertex left out lay farther than `toleranceM` from it (Douglas & Peucker 1973). */
export function simplify(
  line: { readonly lat: readonly number[]; readonly lon: readonly number[] },
  toleranceM: number,
) {
  const count = line.lat.length;
  const keep = new Uint8Array(count);
  keep[0] = 1;
  keep[count - 1] = 1;
  const frame = localFrame(line.lat[0]!, line.lon[0]!);
  const xy = line.lat.map((lat, i) => frame.toXY(lat, line.lon[i]!));
  const spans: [number, number][] = [[0, count - 1]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    const a = xy[from] as { x: number; y: number };
    const b = xy[to] as { x: number; y: number };
    const length2 = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
    let worst = toleranceM;
    let at = -1;
    for (let i = from + 1; i < to; i++) {
      const p = xy[i] as { x: number; y: number };
      const t = length2 > 0 ? ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length2 : 0;
      const on = Math.min(1, Math.max(0, t));
      const away = Math.hypot(p.x - a.x - on * (b.x - a.x), p.y - a.y - on * (b.y - a.y));
      if (away > worst) {
        worst = away;
        at = i;
      }
    }
    if (at < 0) continue;
    keep[at] = 1;
    spans.push([from, at], [at, to]);
  }
  return { lat: line.lat.filter((_, i) => keep[i] === 1), lon: line.lon.filter((_, i) => keep[i] === 1) };
}

/** The line as another map draws it: moved by a smooth field of the given amplitude in north and in east. */
export function displace(
  line: { readonly lat: readonly number[]; readonly lon: readonly number[] },
  amplitudeM: number,
  random: () => number,
) {
  const frame = localFrame(line.lat[0]!, line.lon[0]!);
  const wave = () => {
    const k = (2 * Math.PI) / (1000 + 1000 * random());
    const angle = 2 * Math.PI * random();
    const phase = 2 * Math.PI * random();
    return (x: number, y: number) =>
      amplitudeM * Math.sin(k * (x * Math.cos(angle) + y * Math.sin(angle)) + phase);
  };
  const [north, east] = [wave(), wave()];
  const moved = line.lat.map((lat, i) => {
    const { x, y } = frame.toXY(lat, line.lon[i]!);
    return frame.fromXY(x + east(x, y), y + north(x, y));
  });
  return { lat: moved.map((place) => place.lat), lon: moved.map((place) => place.lon) };
}
