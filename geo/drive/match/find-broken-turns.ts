import { readRestriction } from '../../graph/read-restriction.ts';
import type { RoadGraph } from '../../graph/road-graph.ts';
import type { Roads, TurnRestriction } from '../../roads/roads.ts';
import type { BrokenTurn } from '../drive.ts';
import type { EdgePart } from './trace-paths.ts';

/** Turning back so near a node is turning back at it: a vehicle needs as much room. */
const TURNED_BACK_M = 8;
const SAME_PLACE_M = 1e-6;

/** A turn that a restriction forbids, with the metres along the path. */
interface PathTurn {
  readonly atM: number;
  readonly restriction: TurnRestriction;
  readonly node: number;
}

/** A way come onto: its OSM id, metres along the path, the node it was come onto at. */
interface Entered {
  readonly way: number;
  readonly atM: number;
  readonly node: number;
}

/** Turns of a path that a mapped restriction forbids, at a node or by way of other ways, in driving order. */
export function findBrokenTurns(parts: readonly EdgePart[], roads: Roads, graph: RoadGraph): PathTurn[] {
  const found: PathTurn[] = [];
  const entered: Entered[] = [];
  let atM = 0;
  parts.forEach((part, i) => {
    const before = parts[i - 1];
    const node = graph.tail[part.directed]!;
    if (before !== undefined && part.fromM < turnedWithinM(before, part)) {
      const turn = graph.forbidden.get(before.directed)?.get(part.directed);
      if (turn !== undefined) found.push({ atM, restriction: turn.restriction, node });
    }
    const way = roads.ways.id[graph.way[part.directed >> 1]!]!;
    if (entered.at(-1)?.way !== way) entered.push({ way, atM, node });
    atM += part.toM - part.fromM;
  });
  return [...found, ...brokenByWays(entered, roads)].sort((a, b) => a.atM - b.atM);
}

/** How far behind a node a part may begin that is turned into there. */
function turnedWithinM(before: EdgePart, part: EdgePart): number {
  return part.directed === (before.directed ^ 1) ? TURNED_BACK_M : SAME_PLACE_M;
}

/** Restrictions that span ways. */
function brokenByWays(entered: readonly Entered[], roads: Roads): PathTurn[] {
  const byFirstWay = restrictionsByFirstWay(roads);
  return entered.flatMap(({ way }, i) =>
    (byFirstWay.get(way) ?? []).flatMap((restriction) => brokenFrom(entered, i, restriction) ?? []),
  );
}

function brokenFrom(
  entered: readonly Entered[],
  i: number,
  restriction: TurnRestriction,
): PathTurn | undefined {
  const rule = readRestriction(restriction)?.rule;
  let next = i + 1;
  const via = new Set(restriction.viaWays);
  while (via.delete(entered[next]?.way ?? Number.NaN)) next++;
  const end = entered[next];
  if (rule === undefined || via.size > 0 || end === undefined) return undefined;
  const named = restriction.to.includes(end.way);
  return named === rule.startsWith('no_') ? { atM: end.atM, restriction, node: end.node } : undefined;
}

/** The same with the drive's metres and the place. */
export function placeTurn(turn: PathTurn, startM: number, roads: Roads): BrokenTurn {
  return {
    atM: startM + turn.atM,
    restriction: turn.restriction,
    lat: roads.nodes.lat[turn.node]!,
    lon: roads.nodes.lon[turn.node]!,
  };
}

const kept = new WeakMap<Roads, ReadonlyMap<number, readonly TurnRestriction[]>>();

function restrictionsByFirstWay(roads: Roads): ReadonlyMap<number, readonly TurnRestriction[]> {
  const known = kept.get(roads);
  if (known !== undefined) return known;
  const lists = new Map<number, TurnRestriction[]>();
  for (const restriction of roads.restrictions) {
    if (restriction.viaWays.length === 0) continue;
    for (const way of new Set(restriction.from)) {
      const list = lists.get(way);
      if (list === undefined) lists.set(way, [restriction]);
      else list.push(restriction);
    }
  }
  kept.set(roads, lists);
  return lists;
}
