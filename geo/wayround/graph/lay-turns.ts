import { readRestriction } from '../../graph/read-restriction.ts';
import type { RoadGraph } from '../../graph/road-graph.ts';
import { turnsBack } from '../../graph/turns-back.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import type { Roads, Tags, TurnRestriction } from '../../roads/roads.ts';
import { carriagewayOf } from '../../tags/carriageway.ts';
import { isTurningPlace } from './split-nodes.ts';
import type { States } from './states.ts';
import type { TurnGraph } from './turn-graph.ts';

type Turns = Pick<
  TurnGraph,
  'turnStart' | 'turnFrom' | 'turnTo' | 'turnRule' | 'rules' | 'inStart' | 'inTurn'
>;

/** No motorhome turns round on less without backing up. Metres; common practice, no source. */
const LEAST_CIRCLE_M = 8;

/** States. */
const LOOK_UP_EVERY = 1 << 16;

/** Every turn that the network has, forbidden ones included, each with what restrictions say of it. */
export function layTurns(graph: RoadGraph, roads: Roads, states: States, lookUp: () => void): Turns {
  const { stateCount, edgeOf } = states.laid;
  const turnStart = new Uint32Array(stateCount + 1);
  const most = mostTurns(graph, states);
  const [from, to, rule] = [0, 1, 2].map(() => new Int32Array(most)) as [Int32Array, Int32Array, Int32Array];
  const rules = new RuleSets(graph, roads, states);
  const roomy = roomyWays(roads);
  let count = 0;
  for (let state = 0; state < stateCount; state++) {
    if (state % LOOK_UP_EVERY === 0) lookUp();
    const into = edgeOf[state]!;
    const node = graph.head[into]!;
    for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++) {
      const outOf = graph.out[i]!;
      if (turnsBack(graph, roads, into, outOf) && !mayTurnRound(graph, roads, into, roomy)) continue;
      from[count] = state;
      to[count] = rules.byWay ? states.stateAt(outOf, states.wordAfter(state, outOf)) : outOf;
      rule[count] = rules.of(state, outOf);
      count++;
    }
    turnStart[state + 1] = count;
  }
  const turnTo = to.slice(0, count);
  return {
    turnStart,
    turnFrom: from.slice(0, count),
    turnTo,
    turnRule: rule.slice(0, count),
    rules: rules.sets,
    ...groupByTarget(turnTo, stateCount),
  };
}

/** As many turns as there are ways on from the end of every state. */
function mostTurns({ head, outStart }: RoadGraph, { laid: { stateCount, edgeOf } }: States): number {
  let most = 0;
  for (let state = 0; state < stateCount; state++) {
    const node = head[edgeOf[state]!]!;
    most += outStart[node + 1]! - outStart[node]!;
  }
  return most;
}

/** Whether some vehicle may turn round at the head of an edge; which one is asked later. */
function mayTurnRound(
  graph: RoadGraph,
  roads: Roads,
  into: number,
  roomy: (way: number) => boolean,
): boolean {
  return isTurningPlace(roads.nodes.tags.get(graph.head[into]!)) || roomy(graph.way[into >> 1]!);
}

/** Whether a way is mapped wide enough for the smallest circle; each way's tags are read once. */
function roomyWays({ ways }: Roads): (way: number) => boolean {
  // 0: not asked yet, 1: no, 2: yes
  const known = new Uint8Array(ways.count);
  return (way) => {
    if (known[way] === 0) known[way] = (roomAcrossM(mappedOn({ ways }, way)) ?? 0) >= LEAST_CIRCLE_M ? 2 : 1;
    return known[way] === 2;
  };
}

/** The mapped width of a road less what cars parked on it take, metres; undefined where none is mapped. */
export function roomAcrossM(tags: Tags): number | undefined {
  const mapped = carriagewayOf(tags);
  return mapped && mapped.widthM - mapped.parkedM;
}

/** Collects which restrictions speak of which turn; equal sets are one. */
class RuleSets {
  readonly sets: (readonly TurnRestriction[])[] = [[]];
  readonly byWay: boolean;
  private readonly indexOf = new Map<string, number>();

  constructor(
    private readonly graph: RoadGraph,
    private readonly roads: Roads,
    private readonly states: States,
  ) {
    this.byWay = roads.restrictions.some(({ viaWays }) => viaWays.length > 0);
  }

  of(state: number, outOf: number): number {
    const into = this.states.laid.edgeOf[state]!;
    const atNode = this.graph.forbidden.get(into)?.get(outOf)?.restriction;
    const byWays = this.byWay ? this.brokenByWays(state, into, outOf) : [];
    if (atNode === undefined && byWays.length === 0) return 0;
    const set = atNode === undefined ? byWays : [atNode, ...byWays];
    const key = set.map(({ id }) => id).join(' ');
    const known = this.indexOf.get(key);
    if (known !== undefined) return known;
    this.sets.push(set);
    this.indexOf.set(key, this.sets.length - 1);
    return this.sets.length - 1;
  }

  private brokenByWays(state: number, into: number, outOf: number): TurnRestriction[] {
    const { complete } = this.states.wordOf(state);
    if (complete.length === 0) return [];
    const id = (directed: number) => this.roads.ways.id[this.graph.way[directed >> 1]!]!;
    const next = id(outOf);
    if (next === id(into)) return [];
    return complete.filter((restriction) => {
      const rule = readRestriction(restriction)?.rule;
      return rule !== undefined && restriction.to.includes(next) === rule.startsWith('no_');
    });
  }
}

function groupByTarget(turnTo: Int32Array, stateCount: number): Pick<Turns, 'inStart' | 'inTurn'> {
  const inStart = new Uint32Array(stateCount + 1);
  for (const state of turnTo) inStart[state + 1] = inStart[state + 1]! + 1;
  for (let state = 0; state < stateCount; state++) inStart[state + 1] = inStart[state + 1]! + inStart[state]!;
  const next = inStart.slice();
  const inTurn = new Int32Array(turnTo.length);
  turnTo.forEach((state, turn) => {
    inTurn[next[state]!] = turn;
    next[state] = next[state]! + 1;
  });
  return { inStart, inTurn };
}
