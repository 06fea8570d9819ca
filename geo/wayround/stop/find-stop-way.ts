import { itemAt, lastOrZero } from '../../lists.ts';
import { lengthOf } from '../along/splice.ts';
import type { FoundDetour } from '../past/find-detour.ts';
import { leftTo, type Trip } from '../past/trip.ts';
import type { Snapped } from '../plan/snap.ts';
import { firstLayer, LAYERS } from '../search/layers.ts';
import type { Overlay } from '../search/overlay.ts';
import type { Found, Question, Source, Target } from '../search/question.ts';
import { searchEach, searchForward } from '../search/search-forward.ts';

/** A way off the drive to a place and back on to it. */
export interface StopWay {
  readonly detour: FoundDetour;
  /** metres along the way to where the vehicle stops */
  readonly stopM: number;
  /** dearer than the drive as it is by so much, by the prices */
  readonly extraTenths: number;
}

/** The part of the drive that the way may take the place of: metres along it. */
export interface Between {
  readonly lowM: number;
  readonly highM: number;
}

/** Rounding of places along a drive. Metres. */
const SAME_PLACE_M = 0.5;
/** Among ways so little dearer the one is taken that keeps most of the drive. Tenths of seconds. */
const SLACK_TENTHS = 100;

/** A step with its place in the drive. */
interface At {
  readonly step: number;
}

/**
 * The least-cost way from a part of the drive to a place on its road, and on to the drive again further on. The vehicle
 * stops there: roads for those who go there are open, and it goes on in the direction it came.
 */
export function findStopWay(
  trip: Trip,
  place: Snapped,
  between: Between,
  overlay: Overlay,
): StopWay | undefined {
  const { field, terms, input } = trip;
  const base = { field, terms, overlay, lookUp: input.check.lookUp };
  const sources = sourcesOf(trip, between);
  if (sources.length === 0) return undefined;
  const there = searchEach({
    ...base,
    sources,
    targets: targetsAt(place, base),
    leftTenths: leftTo(place.at, field.costs.roads.nodes),
  });
  let best: StopWay | undefined;
  for (const found of there) {
    const leaves = itemAt(sources, found.source).step;
    const targets = targetsOf(trip, { lowM: itemAt(trip.steps, leaves).toM, highM: between.highM });
    if (targets.length === 0) continue;
    const lost = (_: number, target: number) => itemAt(trip.steps, itemAt(targets, target).step).fromM;
    const back = searchForward({
      ...base,
      sources: [onward(found, place, base)],
      targets,
      leftTenths: trip.leftTenths,
      slack: { tenths: SLACK_TENTHS, lost },
    });
    if (back.states === undefined) continue;
    const way = wayOf(trip, { there: found, back, place, leaves, meets: itemAt(targets, back.target).step });
    if (way !== undefined && (best === undefined || way.extraTenths < best.extraTenths)) best = way;
  }
  return best;
}

type Base = Pick<Question, 'field'>;

function sourcesOf({ steps, costs }: Trip, { lowM, highM }: Between): (Source & At)[] {
  return steps.flatMap(({ directed, toM, toHead }, step) =>
    toHead && toM >= lowM - SAME_PLACE_M && toM <= highM + SAME_PLACE_M
      ? [
          {
            step,
            state: directed,
            layer: costs.layer[step]!,
            costTenths: costs.endTenths[step]!,
            timeTenths: costs.endTime[step]!,
          },
        ]
      : [],
  );
}

function targetsOf({ steps, costs }: Trip, { lowM, highM }: Between): (Target & At)[] {
  const total = lastOrZero(costs.endTenths);
  return steps.flatMap(({ directed, fromM, fromTail }, step) =>
    fromTail && fromM >= lowM - SAME_PLACE_M && fromM <= highM + SAME_PLACE_M
      ? [
          {
            step,
            state: directed,
            layers: itemAt(costs.onward, step),
            restTenths: total - costs.beginTenths[step]!,
          },
        ]
      : [],
  );
}

/** The place on every state of its directed edges. */
function targetsAt(place: Snapped, base: Base): Target[] {
  const { graph } = base.field.costs;
  const layers = new Array<boolean>(LAYERS).fill(true);
  return place.directed.flatMap((directed) => {
    const states = [directed];
    for (let state = 2 * graph.edgeCount; state < graph.stateCount; state++)
      if (graph.edgeOf[state] === directed) states.push(state);
    const restTenths = shareTenths(directed, alongM(place, directed, base), base);
    return states.map((state) => ({ state, layers, restTenths }));
  });
}

/** On from the place, in the direction it was come to. */
function onward({ states, costTenths }: Found, place: Snapped, base: Base): Source {
  const { costs } = base.field;
  const state = itemAt(states, states.length - 1);
  const directed = costs.graph.edgeOf[state]!;
  const leftM = costs.graph.lengthM[directed >> 1]! - alongM(place, directed, base);
  const cost = costTenths + shareTenths(directed, leftM, base);
  return { state, layer: firstLayer(costs.kind(directed).ground), costTenths: cost, timeTenths: cost };
}

/** Metres along a directed edge, in its own direction. */
function alongM({ atM }: Snapped, directed: number, { field }: Base): number {
  return directed % 2 === 0 ? atM : field.costs.graph.lengthM[directed >> 1]! - atM;
}

function shareTenths(directed: number, metres: number, { field: { costs } }: Base): number {
  return Math.ceil(
    (costs.costTenths(directed) * metres) / Math.max(1e-9, costs.graph.lengthM[directed >> 1]!),
  );
}

interface Halves {
  readonly there: Found;
  readonly back: Found & { readonly states: readonly number[] };
  readonly place: Snapped;
  /** steps of the drive */
  readonly leaves: number;
  readonly meets: number;
}

/** Both halves as one way, without what they share with the drive before the place and after it. */
function wayOf(trip: Trip, { there, back, place, leaves, meets }: Halves): StopWay | undefined {
  const { steps, field, costs } = trip;
  const { edgeOf, lengthM } = field.costs.graph;
  const edges = [...there.states, ...back.states.slice(1)].map((state) => edgeOf[state]!);
  const stopAt = there.states.length - 1;
  let [first, last, from, to] = [leaves, meets, 1, edges.length - 1];
  while (from < stopAt && steps[first + 1]?.directed === edges[from] && steps[first + 1]?.goesOn === true) {
    first++;
    from++;
  }
  while (
    to - 1 > stopAt &&
    steps[last - 1]?.directed === edges[to - 1] &&
    steps[last]?.goesOn === true &&
    last - 1 > first
  ) {
    last--;
    to--;
  }
  const [fromM, toM] = [itemAt(steps, first).toM, itemAt(steps, last).fromM];
  if (toM < fromM - SAME_PLACE_M || stopAt < from || stopAt >= to) return undefined;
  const parts = edges
    .slice(from, to)
    .map((directed) => ({ directed, fromM: 0, toM: lengthM[directed >> 1]! }));
  const stopM = lengthOf(parts.slice(0, stopAt - from)) + alongM(place, edges[stopAt]!, trip);
  return {
    detour: { fromM, toM: Math.max(fromM, toM), parts, costTenths: back.costTenths, gives: 0 },
    stopM,
    extraTenths: back.costTenths - lastOrZero(costs.endTenths),
  };
}
