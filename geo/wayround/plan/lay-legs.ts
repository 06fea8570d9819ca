import type { EdgePart } from '../../drive/match/trace-paths.ts';
import { itemAt } from '../../lists.ts';
import type { TurnGraph } from '../graph/turn-graph.ts';
import { leftTo } from '../past/trip.ts';
import { firstLayer, LAYERS } from '../search/layers.ts';
import type { Found, Question, Source, Target } from '../search/question.ts';
import { searchBothWays } from '../search/search-both-ways.ts';
import { searchEach } from '../search/search-forward.ts';
import type { Snapped } from './snap.ts';

/** A place of a plan on its road; at a stop the vehicle has business, so that roads for those who go there are open. */
export interface PlanStop extends Snapped {
  readonly stop: boolean;
}

/** A leg come to its end in one state, with the leg before it. */
interface Arrived {
  readonly found: Found;
  readonly source: Source;
  readonly before: Arrived | undefined;
}

/** Parts of edges driven, or the leg that nothing serves. */
export type LaidLegs =
  | { readonly parts: readonly EdgePart[]; readonly costTenths: number }
  | { readonly parts: undefined; readonly leg: number };

/**
 * The least-cost way through all places in their order. Every direction that a leg may end in is carried on into the next,
 * so that no place between turns the vehicle round.
 */
export function layLegs(stops: readonly PlanStop[], base: Question): LaidLegs {
  const { graph } = base.field.costs;
  let arrived: (Arrived | undefined)[] = [undefined];
  let sources = startSources(stops[0] as PlanStop, base);
  for (let leg = 0; leg + 1 < stops.length; leg++) {
    const [from, to] = [stops[leg], stops[leg + 1]] as [PlanStop, PlanStop];
    const targets = targetsOf(to, base, leg + 2 === stops.length || to.stop);
    const found = searchLeg({ ...base, sources, targets }, from, to, stops.length === 2);
    const reached = found.map((one): Arrived => {
      const source = sources[one.source] as Source;
      return { found: one, source, before: arrived[one.source] };
    });
    if (reached.length === 0) return { parts: undefined, leg };
    arrived = reached;
    sources = reached.map((one) => onward(one, to, base));
  }
  const best = arrived.flatMap((one) => one ?? []).sort((a, b) => a.found.costTenths - b.found.costTenths)[0];
  if (best === undefined) return { parts: undefined, leg: 0 };
  return { parts: partsOf(best, stops, graph), costTenths: best.found.costTenths };
}

/** The place of a stop along a directed edge, metres in its own direction. */
function offsetM({ atM }: Snapped, directed: number, graph: TurnGraph): number {
  return directed % 2 === 0 ? atM : graph.lengthM[directed >> 1]! - atM;
}

function share(directed: number, metres: number, base: Question): number {
  const { costs } = base.field;
  return Math.ceil(
    (costs.costTenths(directed) * metres) / Math.max(1e-9, costs.graph.lengthM[directed >> 1]!),
  );
}

function startSources(stop: PlanStop, base: Question): Source[] {
  const { costs } = base.field;
  return stop.directed.map((directed) => {
    const leftM = costs.graph.lengthM[directed >> 1]! - offsetM(stop, directed, costs.graph);
    const costTenths = share(directed, leftM, base);
    return {
      state: directed,
      layer: firstLayer(costs.kind(directed).ground),
      costTenths,
      timeTenths: costTenths,
    };
  });
}

function targetsOf(stop: PlanStop, base: Question, ends: boolean): Target[] {
  const { graph } = base.field.costs;
  return stop.directed.flatMap((directed) => {
    const states = [directed];
    for (let state = 2 * graph.edgeCount; state < graph.stateCount; state++)
      if (graph.edgeOf[state] === directed) states.push(state);
    const restTenths = share(directed, offsetM(stop, directed, graph), base);
    // a place passed through may be left again by a layer that has not begun to end
    const layers = Array.from({ length: LAYERS }, (_, layer) => ends || layer <= 2);
    return states.map((state) => ({ state, layers, restTenths }));
  });
}

function searchLeg(question: Question, from: PlanStop, to: PlanStop, alone: boolean): Found[] {
  const direct = directly(question, from, to);
  const { nodes } = question.field.costs.roads;
  const leftTenths = leftTo(to.at, nodes);
  const asked = { ...question, leftTenths };
  if (!alone || question.terms.clockAt !== undefined) return [...direct, ...searchEach(asked)];
  const found = searchBothWays(asked, leftTo(from.at, nodes));
  return found.states === undefined ? direct : [...direct, found];
}

/** Both places on one edge, the second ahead of the first: no turn is needed. */
function directly(question: Question, from: PlanStop, to: PlanStop): Found[] {
  return question.sources.flatMap(({ state, layer, costTenths }, source) => {
    const ahead = state % 2 === 0 ? to.atM > from.atM : to.atM < from.atM;
    if (!to.directed.includes(state) || !from.directed.includes(state) || !ahead) return [];
    const { graph } = question.field.costs;
    const beyondM = graph.lengthM[state >> 1]! - offsetM(to, state, graph);
    const cost = costTenths - share(state, beyondM, question);
    return [{ states: [state], source, target: 0, layer, costTenths: cost, gives: 0, settled: 0 }];
  });
}

/** Where the next leg starts: on the edge it has come to, in its direction, at the edge's end. */
function onward({ found }: Arrived, stop: PlanStop, base: Question): Source {
  const { costs } = base.field;
  const { graph } = costs;
  const state = itemAt(found.states, found.states.length - 1);
  const directed = graph.edgeOf[state]!;
  const leftM = graph.lengthM[directed >> 1]! - offsetM(stop, directed, graph);
  const layer = stop.stop ? firstLayer(costs.kind(directed).ground) : found.layer;
  const cost = found.costTenths + share(directed, leftM, base);
  return { state, layer, costTenths: cost, timeTenths: cost };
}

function partsOf(last: Arrived, stops: readonly PlanStop[], graph: TurnGraph): EdgePart[] {
  const legs: Found[] = [];
  for (let at: Arrived | undefined = last; at !== undefined; at = at.before) legs.unshift(at.found);
  const edges = legs.flatMap(({ states }, leg) => (leg === 0 ? states : states.slice(1)));
  const parts = edges.map((state): EdgePart => {
    const directed = graph.edgeOf[state]!;
    return { directed, fromM: 0, toM: graph.lengthM[directed >> 1]! };
  });
  const [first, end] = [parts[0], parts.at(-1)];
  if (first === undefined || end === undefined) return [];
  parts[0] = { ...first, fromM: offsetM(stops[0] as PlanStop, first.directed, graph) };
  const whole = parts.at(-1) as EdgePart;
  parts[parts.length - 1] = { ...whole, toM: offsetM(stops.at(-1) as PlanStop, end.directed, graph) };
  return parts.filter(({ fromM, toM }) => toM > fromM);
}
