import type { Roads, TurnRestriction } from '../../roads/roads.ts';
import type { BrokenTurn } from '../drive.ts';
import type { RoadGraph } from './graph/graph.ts';
import type { Piece } from './graph/path.ts';
import { readRestriction } from './graph/turns.ts';

/** A turn that a restriction forbids, with the metres along the run. */
export interface RunTurn {
  readonly atM: number;
  readonly restriction: TurnRestriction;
  readonly node: number;
}

/** Turns of a run that a mapped restriction forbids, at a node or by way of other ways, in driving order. */
export function findBrokenTurns(pieces: readonly Piece[], roads: Roads, graph: RoadGraph): RunTurn[] {
  const found: RunTurn[] = [];
  const viaWays = restrictionsByFirstWay(roads);
  // the drive as runs of one OSM way, for restrictions that span ways
  const passed: { way: number; atM: number; node: number }[] = [];
  let atM = 0;
  pieces.forEach((piece, i) => {
    const before = pieces[i - 1];
    const node = graph.tail[piece.directed]!;
    if (before !== undefined && piece.fromM === 0) {
      const turn = graph.forbidden.get(before.directed)?.get(piece.directed);
      if (turn !== undefined) found.push({ atM, restriction: turn.restriction, node });
    }
    const way = roads.ways.id[graph.way[piece.directed >> 1]!]!;
    if (passed.at(-1)?.way !== way) passed.push({ way, atM, node });
    atM += piece.toM - piece.fromM;
  });
  passed.forEach((_, i) => {
    for (const restriction of viaWays.get((passed[i] as { way: number }).way) ?? []) {
      const turn = brokenFrom(i, restriction);
      if (turn !== undefined) found.push(turn);
    }
  });
  return found.sort((a, b) => a.atM - b.atM);

  function brokenFrom(i: number, restriction: TurnRestriction): RunTurn | undefined {
    const rule = readRestriction(restriction)?.rule;
    let next = i + 1;
    const via = new Set(restriction.viaWays);
    while (via.delete(passed[next]?.way ?? Number.NaN)) next++;
    const end = passed[next];
    if (rule === undefined || via.size > 0 || end === undefined) return undefined;
    const named = restriction.to.includes(end.way);
    return named === rule.startsWith('no_') ? { atM: end.atM, restriction, node: end.node } : undefined;
  }
}

/** The same with the drive's metres and the place. */
export function placeTurn(turn: RunTurn, startM: number, roads: Roads): BrokenTurn {
  return {
    atM: startM + turn.atM,
    restriction: turn.restriction,
    lat: roads.nodes.lat[turn.node]!,
    lon: roads.nodes.lon[turn.node]!,
  };
}

const byFirstWay = new WeakMap<Roads, ReadonlyMap<number, readonly TurnRestriction[]>>();

function restrictionsByFirstWay(roads: Roads): ReadonlyMap<number, readonly TurnRestriction[]> {
  const known = byFirstWay.get(roads);
  if (known !== undefined) return known;
  const lists = new Map<number, TurnRestriction[]>();
  for (const restriction of roads.restrictions) {
    if (restriction.viaWays.length === 0) continue;
    for (const way of restriction.from) lists.set(way, [...(lists.get(way) ?? []), restriction]);
  }
  byFirstWay.set(roads, lists);
  return lists;
}
