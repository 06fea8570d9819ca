import type { Roads, TurnRestriction } from '../roads/roads.ts';
import { readRestriction } from './read-restriction.ts';
import type { RoadEdges } from './road-edges.ts';
import { turnsBack } from './turns-back.ts';

/** What a mapped restriction says about one turn. */
interface ForbiddenTurn {
  readonly restriction: TurnRestriction;
  /** holds at all times, so the match may be guided by it */
  readonly always: boolean;
}

/** By directed edge driven in, then by directed edge driven out. Restrictions via a way are not in here. */
export type ForbiddenTurns = ReadonlyMap<number, ReadonlyMap<number, ForbiddenTurn>>;

/** All turns at one node that a restriction forbids. */
export function findForbiddenTurns(roads: Roads, edges: RoadEdges): ForbiddenTurns {
  const found = new Map<number, Map<number, ForbiddenTurn>>();
  const nodeOf = indexNodes(
    roads,
    roads.restrictions.flatMap((restriction) => restriction.viaNodes),
  );
  for (const restriction of roads.restrictions) {
    const read = readRestriction(restriction);
    if (read === undefined || restriction.viaWays.length > 0) continue;
    for (const viaNode of restriction.viaNodes) {
      const node = nodeOf.get(viaNode);
      if (node === undefined) continue;
      for (const { into, outOf } of turnsAt(node, restriction, roads, edges)) {
        const back = turnsBack(edges, roads, into.directed, outOf.directed);
        if (!forbids(read.rule, { into, outOf, back })) continue;
        const outs = found.get(into.directed) ?? new Map<number, ForbiddenTurn>();
        // a turn forbidden at all times stays so, whatever a second restriction says of some hours
        if (outs.get(outOf.directed)?.always !== true)
          outs.set(outOf.directed, { restriction, always: read.always });
        found.set(into.directed, outs);
      }
    }
  }
  return found;
}

interface TurnEnd {
  readonly directed: number;
  /** OSM id of its way */
  readonly id: number;
}

/** The way out of a turn; `named` when the restriction's `to` names it. */
interface TurnOut extends TurnEnd {
  readonly named: boolean;
}

/** Every turn at a node out of a way that the restriction's `from` names. */
function* turnsAt(
  node: number,
  restriction: TurnRestriction,
  roads: Roads,
  edges: RoadEdges,
): Generator<{ readonly into: TurnEnd; readonly outOf: TurnOut }> {
  const leaving = edges.out.subarray(edges.outStart[node], edges.outStart[node + 1]);
  const idOf = (directed: number) => roads.ways.id[edges.way[directed >> 1]!]!;
  for (const reversed of leaving) {
    const into = { directed: reversed ^ 1, id: idOf(reversed) };
    if (!restriction.from.includes(into.id)) continue;
    for (const directed of leaving) {
      const id = idOf(directed);
      yield { into, outOf: { directed, id, named: restriction.to.includes(id) } };
    }
  }
}

interface TurnAsked {
  readonly into: TurnEnd;
  readonly outOf: TurnOut;
  /** it leads back over the line just driven */
  readonly back: boolean;
}

function forbids(rule: string, { into, outOf, back }: TurnAsked): boolean {
  if (rule.startsWith('only_')) return !outOf.named && !back;
  // from and to may be one way: then only turning back, or only going on, is meant
  return outOf.named && (into.id !== outOf.id || back === (rule === 'no_u_turn'));
}

function indexNodes(roads: Roads, ids: readonly number[]): Map<number, number> {
  const wanted = new Set(ids);
  const index = new Map<number, number>();
  if (wanted.size === 0) return index;
  for (let node = 0; node < roads.nodes.count; node++) {
    const id = roads.nodes.id[node]!;
    if (wanted.has(id)) index.set(id, node);
  }
  return index;
}
