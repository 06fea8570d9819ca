import { distanceM } from '../earth/sphere.ts';
import type { Roads } from '../roads/roads.ts';
import { type ForbiddenTurns, findForbiddenTurns } from './forbidden-turns.ts';
import { cutIntoEdges, type RoadEdges } from './road-edges.ts';

/** Roads as a graph: edges between junctions, and the turns between them that the map forbids. */
export interface RoadGraph extends RoadEdges {
  readonly forbidden: ForbiddenTurns;
}

const built = new WeakMap<Roads, RoadGraph>();

/** The graph of these roads, built at the first call and kept as long as the roads are. */
export function roadGraph(roads: Roads): RoadGraph {
  const known = built.get(roads);
  if (known !== undefined) return known;
  const edges = cutIntoEdges(roads);
  const graph = { ...edges, forbidden: findForbiddenTurns(roads, edges) };
  built.set(roads, graph);
  return graph;
}

/** The same where it has been built. */
export function roadGraphBuilt(roads: Roads): RoadGraph | undefined {
  return built.get(roads);
}

const measured = new WeakMap<Roads, Map<number, Float64Array>>();

/** Metres along a way at each of its refs: a view of the graph's where it has been built, else measured and kept. */
export function wayAlong(roads: Roads, way: number): Float64Array {
  const { start } = roads.ways;
  const graph = built.get(roads);
  if (graph !== undefined) return graph.alongM.subarray(start[way], start[way + 1]);
  const known = measured.get(roads) ?? new Map<number, Float64Array>();
  measured.set(roads, known);
  const along = known.get(way) ?? measure(roads, way);
  known.set(way, along);
  return along;
}

function measure({ ways: { start, refs }, nodes: { lat, lon } }: Roads, way: number): Float64Array {
  const begin = start[way]!;
  const along = new Float64Array(start[way + 1]! - begin);
  for (let at = 1; at < along.length; at++) {
    const [a, b] = [refs[begin + at - 1]!, refs[begin + at]!];
    along[at] = along[at - 1]! + distanceM(lat[a]!, lon[a]!, lat[b]!, lon[b]!);
  }
  return along;
}
