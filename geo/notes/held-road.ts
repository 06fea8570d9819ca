import { wayAlong } from '../graph/road-graph.ts';
import { append, lastOrZero } from '../lists.ts';
import { mappedOn } from '../roads/mapped-on.ts';
import { type Roads, WAY_KIND } from '../roads/roads.ts';
import { HOLDS_M, type OnWay } from './place-note.ts';
import { isNamed, isSameRoad, seenOn } from './same-road.ts';

/** A part of a way on which a note holds. Metres along the way from its first ref. */
export interface HeldPart {
  /** index into Roads.ways */
  readonly way: number;
  readonly fromM: number;
  readonly toM: number;
}

/** The road within 25 m either way of a note's place, over the joints of its ways but not into other roads. */
export function heldRoad(on: readonly OnWay[], roads: Roads): HeldPart[] {
  const parts: HeldPart[] = [];
  /** how far every walk begun at a place went on: a road may come back to where it was */
  const begun = new Map<string, number>();
  const walks = on.flatMap((place): Walk[] => [
    { ...place, leftM: HOLDS_M, step: 1 },
    { ...place, leftM: HOLDS_M, step: -1 },
  ]);
  for (let next = walks.shift(); next !== undefined; next = walks.shift()) {
    const key = `${next.way} ${next.alongM} ${next.step}`;
    if ((begun.get(key) ?? 0) >= next.leftM) continue;
    begun.set(key, next.leftM);
    const { part, onward } = walk(next, roads);
    parts.push(part);
    append(walks, onward);
  }
  return parts;
}

/** Where a walk along the road has come to, which way it goes on along the way, and how far. */
interface Walk extends OnWay {
  readonly leftM: number;
  readonly step: 1 | -1;
}

/** The part of a way that a walk covers, and the walks that go on behind its end. */
function walk(
  { way, alongM, leftM, step }: Walk,
  roads: Roads,
): { readonly part: HeldPart; readonly onward: readonly Walk[] } {
  const lengthM = lengthOf(way, roads);
  const endM = step > 0 ? Math.min(lengthM, alongM + leftM) : Math.max(0, alongM - leftM);
  const part = { way, fromM: Math.min(alongM, endM), toM: Math.max(alongM, endM) };
  const restM = leftM - Math.abs(endM - alongM);
  if (restM <= 0) return { part, onward: [] };
  const { start, refs } = roads.ways;
  const node = refs[step > 0 ? start[way + 1]! - 1 : start[way]!]!;
  const onward = continued(way, node, roads).flatMap((place): Walk[] => [
    // the end of a way leads one way only
    ...(place.alongM < lengthOf(place.way, roads) ? [{ ...place, leftM: restM, step: 1 as const }] : []),
    ...(place.alongM > 0 ? [{ ...place, leftM: restM, step: -1 as const }] : []),
  ]);
  return { part, onward };
}

function lengthOf(way: number, roads: Roads): number {
  return lastOrZero(wayAlong(roads, way));
}

/** Where the road of a way goes on behind the node at its end: by name or number; a nameless one where no other joins. */
function continued(way: number, node: number, roads: Roads): OnWay[] {
  const others = waysAt(node, roads).filter((one) => one.way !== way);
  const seen = seenOn(mappedOn(roads, way));
  if (isNamed(seen)) return others.filter((one) => isSameRoad(seen, seenOn(mappedOn(roads, one.way))));
  const [only, another] = others;
  if (only === undefined || another !== undefined) return [];
  const next = seenOn(mappedOn(roads, only.way));
  const isEnd = only.alongM === 0 || only.alongM === lengthOf(only.way, roads);
  return isNamed(next) || next.class !== seen.class || !isEnd ? [] : [only];
}

/** A node itself is asked for; this is for rounding. Metres. */
const AT_NODE_M = 0.05;

function waysAt(node: number, roads: Roads): OnWay[] {
  const { nodes, ways } = roads;
  const found = new Map<string, OnWay>();
  for (const { way, seg } of roads.index.near(nodes.lat[node]!, nodes.lon[node]!, AT_NODE_M)) {
    if (ways.kind[way] !== WAY_KIND.road) continue;
    for (const ref of [seg, seg + 1])
      if (ways.refs[ways.start[way]! + ref] === node)
        found.set(`${way} ${ref}`, { way, alongM: wayAlong(roads, way)[ref]! });
  }
  return [...found.values()];
}
