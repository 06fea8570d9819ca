import type { Roads, TurnRestriction } from '../../../roads/roads.ts';
import { turnRuleFor } from '../../../tags/turn-restriction.ts';
import type { RoadGraph } from './graph.ts';

/** What a mapped restriction says about one turn. */
export interface ForbiddenTurn {
  readonly restriction: TurnRestriction;
  /** holds at all times, so the match may be guided by it */
  readonly always: boolean;
}

/** By directed edge driven in, then by directed edge driven out. Restrictions via a way are not in here. */
export type ForbiddenTurns = ReadonlyMap<number, ReadonlyMap<number, ForbiddenTurn>>;

/** The turn a restriction forbids or commands, when it concerns a motorhome; `always` is false under a condition. */
export function readRestriction(
  restriction: TurnRestriction,
): { readonly rule: string; readonly always: boolean } | undefined {
  const { binds, text } = turnRuleFor(restriction.tags);
  const rule = /^\s*((?:no|only)_\w+)/.exec(text)?.[1];
  if (binds === 'no' || rule === undefined) return undefined;
  return { rule, always: binds === 'yes' };
}

type Shape = Pick<RoadGraph, 'way' | 'head' | 'outStart' | 'out'>;

/** All turns at one node that a restriction forbids. */
export function findForbiddenTurns(roads: Roads, graph: Shape): ForbiddenTurns {
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
      for (const [into, outOf] of turnsAt(node, restriction, read.rule, roads, graph)) {
        const outs = found.get(into) ?? new Map<number, ForbiddenTurn>();
        outs.set(outOf, { restriction, always: read.always });
        found.set(into, outs);
      }
    }
  }
  return found;
}

function* turnsAt(
  node: number,
  restriction: TurnRestriction,
  rule: string,
  roads: Roads,
  graph: Shape,
): Generator<[number, number]> {
  const leaving = graph.out.subarray(graph.outStart[node], graph.outStart[node + 1]);
  const idOf = (directed: number) => roads.ways.id[graph.way[directed >> 1]!]!;
  for (const reversed of leaving) {
    const into = reversed ^ 1;
    if (!restriction.from.includes(idOf(into))) continue;
    for (const outOf of leaving) {
      const named = restriction.to.includes(idOf(outOf));
      const turnsBack = outOf === reversed;
      if (rule.startsWith('only_')) {
        if (!named && !turnsBack) yield [into, outOf];
        continue;
      }
      // from and to may be one way: then only turning back, or only going on, is meant
      const oneWayNamed = idOf(into) === idOf(outOf);
      if (named && (!oneWayNamed || turnsBack === (rule === 'no_u_turn'))) yield [into, outOf];
    }
  }
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
