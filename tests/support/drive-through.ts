import { isForOthers, ROAD_CLASS } from '../../geo/graph/road-class.ts';
import { type RoadGraph, roadGraph } from '../../geo/graph/road-graph.ts';
import type { Roads } from '../../geo/roads/roads.ts';
import { type KnownDrive, knownDrive } from './random-drives.ts';

const REACH_M = 200;

/** The edges with legal ways of 200 m before and after; undefined where no legal way leads to or from them. */
export function driveThrough(
  roads: Roads,
  middle: readonly number[],
  random: () => number,
): KnownDrive | undefined {
  const graph = roadGraph(roads);
  const back = goOn(graph, middle[0]! ^ 1, random, (directed) => directed ^ 1);
  const ahead = goOn(graph, middle.at(-1)!, random, (directed) => directed);
  const edges = [...back.map((directed) => directed ^ 1).reverse(), ...middle, ...ahead];
  return edges.length === middle.length ? undefined : knownDrive(roads, edges);
}

export function isCarRoad(graph: RoadGraph, directed: number): boolean {
  const roadClass = graph.roadClass[directed >> 1]!;
  return !isForOthers(roadClass) && roadClass !== ROAD_CLASS.ferry;
}

export function isDriven(graph: RoadGraph, directed: number): boolean {
  return isCarRoad(graph, directed) && graph.wrongWay[directed] === 0;
}

function goOn(
  graph: RoadGraph,
  from: number,
  random: () => number,
  driven: (directed: number) => number,
): number[] {
  const edges: number[] = [];
  const seen = new Set([from >> 1]);
  let at = from;
  for (let metres = 0; metres < REACH_M; metres += graph.lengthM[at >> 1]!) {
    const node = graph.head[at]!;
    const open = [...graph.out.subarray(graph.outStart[node], graph.outStart[node + 1])].filter(
      (next) => !seen.has(next >> 1) && isDriven(graph, driven(next)),
    );
    if (open.length === 0) break;
    at = open[Math.floor(random() * open.length)]!;
    seen.add(at >> 1);
    edges.push(at);
  }
  return edges;
}
