import type { Roads } from '../roads/roads.ts';
import type { RoadEdges } from './road-edges.ts';

/** Whether a turn leads back over the line just driven; a way may be drawn there and back. */
export function turnsBack(graph: RoadEdges, { ways }: Roads, into: number, outOf: number): boolean {
  if (outOf === (into ^ 1)) return true;
  const [a, b] = [into >> 1, outOf >> 1];
  if (graph.way[a] !== graph.way[b] || graph.tail[into] !== graph.head[outOf]) return false;
  const count = graph.lastRef[a]! - graph.firstRef[a]!;
  if (graph.lastRef[b]! - graph.firstRef[b]! !== count) return false;
  const refAt = (directed: number, i: number) =>
    ways.refs[directed % 2 === 0 ? graph.firstRef[directed >> 1]! + i : graph.lastRef[directed >> 1]! - i];
  for (let i = 0; i <= count; i++) if (refAt(into, i) !== refAt(outOf, count - i)) return false;
  return true;
}
