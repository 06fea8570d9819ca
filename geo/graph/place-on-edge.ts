import { shareOf } from '../earth/between.ts';
import { spanHolding } from '../earth/bisect.ts';
import { bearingDeg, type Place, placeBetween } from '../earth/sphere.ts';
import type { Roads } from '../roads/roads.ts';
import type { RoadEdges } from './road-edges.ts';

/** The ref at which the segment of a way begins that holds a distance along it. */
export function refBefore(roads: Roads, edges: RoadEdges, way: number, alongM: number): number {
  return spanHolding(edges.alongM, alongM, roads.ways.start[way]!, roads.ways.start[way + 1]! - 1);
}

/** The place so many metres along a way from its first ref. */
export function placeAlong(roads: Roads, edges: RoadEdges, way: number, alongM: number): Place {
  const ref = refBefore(roads, edges, way, alongM);
  const [a, b] = nodesOf(roads, ref);
  return placeBetween(a, b, shareOf(alongM, edges.alongM[ref]!, edges.alongM[ref + 1]!));
}

/** Metres along the way for a distance along a directed edge. */
export function alongWay(edges: RoadEdges, directed: number, offsetM: number): number {
  const edge = directed >> 1;
  return directed % 2 === 0
    ? edges.alongM[edges.firstRef[edge]!]! + offsetM
    : edges.alongM[edges.lastRef[edge]!]! - offsetM;
}

/** The place at a distance along a directed edge. Metres. */
export function placeOnEdge(roads: Roads, edges: RoadEdges, directed: number, offsetM: number): Place {
  const way = edges.way[directed >> 1]!;
  return placeAlong(roads, edges, way, alongWay(edges, directed, offsetM));
}

/** Compass direction of a way, in its drawn order, at a distance along it. */
export function headingOnWay(roads: Roads, edges: RoadEdges, way: number, alongM: number): number {
  const [a, b] = nodesOf(roads, refBefore(roads, edges, way, alongM));
  return bearingDeg(a.lat, a.lon, b.lat, b.lon);
}

/** Compass direction of travel at a distance along a directed edge. */
export function headingOnEdge(roads: Roads, edges: RoadEdges, directed: number, offsetM: number): number {
  const way = edges.way[directed >> 1]!;
  const ref = refBefore(roads, edges, way, alongWay(edges, directed, offsetM));
  const [a, b] = nodesOf(roads, ref);
  return directed % 2 === 0 ? bearingDeg(a.lat, a.lon, b.lat, b.lon) : bearingDeg(b.lat, b.lon, a.lat, a.lon);
}

function nodesOf(roads: Roads, ref: number): [Place, Place] {
  const { lat, lon } = roads.nodes;
  const from = roads.ways.refs[ref]!;
  const to = roads.ways.refs[ref + 1]!;
  return [
    { lat: lat[from]!, lon: lon[from]! },
    { lat: lat[to]!, lon: lon[to]! },
  ];
}
