import { localFrame } from '../../earth/frame.ts';
import { roadGraph } from '../../graph/road-graph.ts';
import type { Roads, Tags } from '../../roads/roads.ts';
import { circleThrough } from './circle-through.ts';

/** Ways of one ring; more is no ring. */
const MOST_WAYS = 24;
/** A ring whose places stray farther from the mean radius is not round, and has no radius. Share of the radius. */
const MOST_STRAY = 0.2;

/** Whether a way is part of a ring driven round in one direction. */
export function isRing(tags: Tags): boolean {
  return tags['junction'] === 'roundabout' || tags['junction'] === 'circular';
}

/** Mean radius of the middle line of the ring that a way belongs to, all its ways taken together; undefined where it is not round. */
export function ringRadiusM(roads: Roads, way: number): number | undefined {
  const nodes = [...ringNodes(roads, way)];
  const { lat, lon } = roads.nodes;
  const [first] = nodes;
  if (first === undefined) return undefined;
  const frame = localFrame(lat[first]!, lon[first]!);
  const places = nodes.map((node) => frame.toXY(lat[node]!, lon[node]!));
  const circle = circleThrough(
    places.map(({ x }) => x),
    places.map(({ y }) => y),
  );
  if (circle === undefined) return undefined;
  const stray = Math.sqrt(
    places.reduce(
      (sum, { x, y }) => sum + (Math.hypot(x - circle.x, y - circle.y) - circle.radiusM) ** 2,
      0,
    ) / places.length,
  );
  return stray > MOST_STRAY * circle.radiusM ? undefined : circle.radiusM;
}

/** The nodes of all ways of a ring, found from one of them by their common ends. */
function ringNodes(roads: Roads, way: number): Set<number> {
  const graph = roadGraph(roads);
  const { start, refs, tags } = roads.ways;
  const nodes = new Set<number>();
  const ways = new Set([way]);
  for (const each of ways) {
    if (ways.size > MOST_WAYS) break;
    const first = start[each]!;
    const end = start[each + 1]!;
    for (let at = first; at < end; at++) nodes.add(refs[at]!);
    for (const node of [refs[first]!, refs[end - 1]!])
      for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++) {
        const next = graph.way[graph.out[i]! >> 1]!;
        if (isRing(tags[next] ?? {})) ways.add(next);
      }
  }
  return nodes;
}
