import { itemAt } from '../../lists.ts';
import { leftTo } from '../past/trip.ts';
import { PRICES } from '../price/prices.ts';
import { firstLayer, LAYERS } from '../search/layers.ts';
import type { Found, Question, Source, Target } from '../search/question.ts';
import { searchBothWays } from '../search/search-both-ways.ts';
import { searchEach } from '../search/search-forward.ts';
import { type LaidParts, type LegFound, offsetM, type PlanStop, partsOf } from './leg-parts.ts';

/** Where a leg starts; `turned`: the vehicle has turned round where it stopped. */
interface LegSource extends Source {
  readonly turned: boolean;
}

/** A leg come to its end in one state, with the leg before it. */
interface Arrived extends LegFound {
  readonly before: Arrived | undefined;
}

/** Parts of edges driven, or the leg that nothing serves. */
export type LaidLegs =
  | (LaidParts & { readonly costTenths: number })
  | { readonly parts: undefined; readonly leg: number };

/**
 * The least-cost way through all places in their order. Every direction that a leg may end in is carried on into the next,
 * so that no place between turns the vehicle round but a stop with ground to do it on.
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
      const { turned } = sources[one.source] as LegSource;
      return { found: one, turned, before: arrived[one.source] };
    });
    if (reached.length === 0) return { parts: undefined, leg };
    const next = reached.flatMap((one) => onward(one, to, base).map((source) => ({ one, source })));
    // the last leg's own ends are told apart below
    arrived = leg + 2 === stops.length ? reached : next.map(({ one }) => one);
    sources = next.map(({ source }) => source);
  }
  const best = arrived.flatMap((one) => one ?? []).sort((a, b) => a.found.costTenths - b.found.costTenths)[0];
  if (best === undefined) return { parts: undefined, leg: 0 };
  const legs: Arrived[] = [];
  for (let at: Arrived | undefined = best; at !== undefined; at = at.before) legs.unshift(at);
  return { ...partsOf(legs, stops, graph), costTenths: best.found.costTenths };
}

function share(directed: number, metres: number, base: Question): number {
  const { costs } = base.field;
  return Math.ceil(
    (costs.costTenths(directed) * metres) / Math.max(1e-9, costs.graph.lengthM[directed >> 1]!),
  );
}

/** Out of a place in either direction. */
export function startSources(stop: PlanStop, base: Question): LegSource[] {
  const { costs } = base.field;
  return stop.directed.map((directed) => {
    const leftM = costs.graph.lengthM[directed >> 1]! - offsetM(stop, directed, costs.graph);
    const costTenths = share(directed, leftM, base);
    return {
      state: directed,
      layer: firstLayer(costs.kind(directed).ground),
      costTenths,
      timeTenths: costTenths,
      turned: false,
    };
  });
}

/** At a place, from either side. @param ends a drive may end there, so that roads for those who go there are open */
export function targetsOf(stop: PlanStop, base: Question, ends: boolean): Target[] {
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

/** Where the next leg starts: in the direction it was come to, at the edge's end, or turned round where it stopped. */
function onward({ found }: Arrived, stop: PlanStop, base: Question): LegSource[] {
  const { costs } = base.field;
  const { graph } = costs;
  const state = itemAt(found.states, found.states.length - 1);
  const directed = graph.edgeOf[state]!;
  const onM = graph.lengthM[directed >> 1]! - offsetM(stop, directed, graph);
  const layer = stop.stop ? firstLayer(costs.kind(directed).ground) : found.layer;
  const on = found.costTenths + share(directed, onM, base);
  const straight = { state, layer, costTenths: on, timeTenths: on, turned: false };
  const back = directed ^ 1;
  if (stop.turns !== true || !stop.directed.includes(back)) return [straight];
  const backM = graph.lengthM[back >> 1]! - offsetM(stop, back, graph);
  const turned = found.costTenths + TURNED_TENTHS + share(back, backM, base);
  const ground = firstLayer(costs.kind(back).ground);
  return [straight, { state: back, layer: ground, costTenths: turned, timeTenths: turned, turned: true }];
}

/** Turning round on ground whose room nothing tells. Tenths of seconds. */
const TURNED_TENTHS = 10 * (PRICES.turnRoundS + PRICES.unknownS);
