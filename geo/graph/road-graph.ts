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

/** Metres along a way at each of its refs; a view, not a copy. */
export function wayAlong(roads: Roads, way: number): Float64Array {
  const { start } = roads.ways;
  return roadGraph(roads).alongM.subarray(start[way], start[way + 1]);
}
