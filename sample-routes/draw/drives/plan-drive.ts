import { apartM, type Point } from '../../../geo/earth/point.ts';
import type { Stop } from '../../plan/drives.ts';
import type { District, Way } from '../elements.ts';
import { item, toPlane } from '../lines/plane.ts';

interface Edge {
  readonly to: number;
  readonly way: Way;
  readonly metres: number;
}

/** The district's roads as a graph, to lay drives on. */
export interface Network {
  readonly at: ReadonlyMap<number, Point>;
  readonly edges: ReadonlyMap<number, readonly Edge[]>;
  readonly district: District;
}

const NOT_DRIVEN = new Set(['footway', 'path', 'bridleway', 'steps', 'cycleway', 'construction', 'proposed']);

export function makeNetwork(district: District): Network {
  const at = new Map(district.nodes.map((node) => [node.id, toPlane(node.lat, node.lon)]));
  const edges = new Map<number, Edge[]>();
  const add = (from: number, to: number, way: Way) => {
    const metres = apartM(placeOf(at, from), placeOf(at, to));
    edges.set(from, [...(edges.get(from) ?? []), { to, way, metres }]);
  };
  for (const way of district.ways) {
    const driven =
      way.tags['highway'] !== undefined
        ? !NOT_DRIVEN.has(way.tags['highway'])
        : way.tags['route'] === 'ferry';
    if (!driven || way.tags['area'] === 'yes') continue;
    for (let i = 1; i < way.refs.length; i++) {
      const a = item(way.refs, i - 1);
      const b = item(way.refs, i);
      if (way.tags['oneway'] !== '-1') add(a, b, way);
      if (way.tags['oneway'] !== 'yes') add(b, a, way);
    }
  }
  return { at, edges, district };
}

function placeOf(at: ReadonlyMap<number, Point>, id: number): Point {
  const found = at.get(id);
  if (found === undefined) throw new Error(`no node ${id}`);
  return found;
}

/** One piece of a planned drive. */
export interface Driven {
  readonly from: Point;
  readonly to: Point;
  readonly way: Way;
}

/** The quickest way from stop to stop. */
export function planDrive(network: Network, stops: readonly Stop[]): Driven[] {
  const nodes = stops.map((stop) => nearestNode(network, stop));
  return nodes.slice(1).flatMap((to, i) => quickest(network, item(nodes, i), to));
}

function nearestNode(network: Network, stop: Stop): number {
  let best: { id: number; metres: number } | undefined;
  for (const [id, edges] of network.edges) {
    if (
      stop.on !== undefined &&
      !edges.some(({ way }) => way.tags['name'] === stop.on || way.tags['ref'] === stop.on)
    )
      continue;
    const metres = apartM(placeOf(network.at, id), stop);
    if (metres < (best?.metres ?? Number.POSITIVE_INFINITY)) best = { id, metres };
  }
  if (best === undefined) throw new Error(`no road called ${stop.on}`);
  return best.id;
}

/** Metres of the class that take as long as one on a fast road. */
const SLOWNESS: Readonly<Record<string, number>> = {
  trunk: 0.75,
  trunk_link: 0.9,
  primary: 1,
  secondary: 1.15,
  tertiary: 1.3,
  unclassified: 1.7,
  residential: 2,
  service: 3,
  track: 4,
};

function quickest(network: Network, from: number, to: number): Driven[] {
  const cost = new Map([[from, 0]]);
  const by = new Map<number, { from: number; way: Way }>();
  const done = new Set<number>();
  // the district is small: a sorted queue would be more code than it is worth
  const open = new Map([[from, 0]]);
  while (open.size > 0 && !done.has(to)) {
    const [node, sofar] = cheapest(open);
    open.delete(node);
    done.add(node);
    for (const edge of network.edges.get(node) ?? []) {
      if (done.has(edge.to)) continue;
      const total = sofar + edge.metres * (SLOWNESS[edge.way.tags['highway'] ?? ''] ?? 2);
      if (total >= (cost.get(edge.to) ?? Number.POSITIVE_INFINITY)) continue;
      cost.set(edge.to, total);
      open.set(edge.to, total);
      by.set(edge.to, { from: node, way: edge.way });
    }
  }
  const pieces: Driven[] = [];
  for (let node = to; node !== from; ) {
    const step = by.get(node);
    if (step === undefined) throw new Error(`no way from node ${from} to node ${to}`);
    pieces.unshift({ from: placeOf(network.at, step.from), to: placeOf(network.at, node), way: step.way });
    node = step.from;
  }
  return pieces;
}

function cheapest(open: ReadonlyMap<number, number>): readonly [number, number] {
  let best: readonly [number, number] | undefined;
  for (const entry of open) if (best === undefined || entry[1] < best[1]) best = entry;
  if (best === undefined) throw new Error('nothing left to look at');
  return best;
}
