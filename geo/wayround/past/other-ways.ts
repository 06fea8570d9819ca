import { secondsAt } from '../../drive/times/timetable.ts';
import { type Detour, lengthOf } from '../along/splice.ts';
import { LAYER, LAYERS } from '../search/layers.ts';
import type { Overlay } from '../search/overlay.ts';
import type { Question, Terms } from '../search/question.ts';
import { searchJudged } from '../search/search-judged.ts';
import type { Stretch } from './find-detour.ts';
import { isDoubt, type JudgedWay, type Lessons } from './judge-way.ts';
import { settle } from './settle.ts';
import type { Trip } from './trip.ts';

/** Roads of ways already found are made dearer by this much (penalty method). */
const DEARER = 1.4;
/** An alternative shares at most this much with one already offered (Abraham et al. 2013). */
const MOST_SHARED = 0.8;
/** And is at most so many times its own shortest. */
const MOST_STRETCH = 1.25;
/** Every part of it of this share of the way is itself the shortest. */
const LOCAL_SHARE = 0.25;

/** How far before and behind the best way an alternative may leave the drive and meet it. Metres. */
const AROUND_M = 3000;

/** One more way that differs from those found and is worth offering; undefined where the next one is not. */
export function otherWay(
  trip: Trip,
  stretch: Stretch,
  { overlay, learnt }: Lessons,
  found: readonly [JudgedWay, ...JudgedWay[]],
): JudgedWay | undefined {
  const times = new Map<number, number>();
  for (const { detour } of found)
    for (const { directed } of detour.parts) times.set(directed, (times.get(directed) ?? 1) * DEARER);
  const dearer: Overlay = { edges: new Map(overlay.edges), turns: new Map(overlay.turns), times };
  const lessons = { overlay: dearer, learnt: new Set(learnt), doubtFree: false };
  const differs = (way: Detour) => found.every(({ detour }) => sharedWith(way, detour) <= MOST_SHARED);
  const suits = (way: JudgedWay) => isWorthIt(trip, way, found) && isSound(trip, way, overlay);
  return settle(trip, closeTo(stretch, found[0]), trip.terms, lessons, { weighed: 0, differs, suits }).way;
}

/** Quicker than each way found, or with fewer doubts: another one would not be told. */
function isWorthIt(trip: Trip, way: JudgedWay, found: readonly JudgedWay[]): boolean {
  const [drivenS, doubts] = [extraDrivenS(trip, way), doubtsOf(way)];
  return found.every((one) => drivenS < extraDrivenS(trip, one) || doubts < doubtsOf(one));
}

function doubtsOf({ findings }: JudgedWay): number {
  return findings.filter(isDoubt).length;
}

/** Driving a way against driving what it takes the place of, turns left out. Seconds. */
function extraDrivenS({ field, times }: Trip, { detour: { fromM, toM, parts } }: JudgedWay): number {
  const tenths = parts.reduce((sum, { directed }) => sum + field.costs.timeTenths(directed), 0);
  return tenths / 10 - (secondsAt(times, toM) - secondsAt(times, fromM));
}

/** The best way has to be the best of all; another one only has to be sound, and is looked for close to it. */
function closeTo(stretch: Stretch, { detour }: JudgedWay): Stretch {
  return {
    ...stretch,
    lowM: Math.max(stretch.lowM, detour.fromM - AROUND_M),
    highM: Math.min(stretch.highM, detour.toM + AROUND_M),
  };
}

/** How much of the shorter of two ways the other drives too. */
function sharedWith(a: Detour, b: Detour): number {
  const edges = new Set(a.parts.map(({ directed }) => directed));
  const sharedM = lengthOf(b.parts.filter(({ directed }) => edges.has(directed)));
  return sharedM / Math.max(1e-9, Math.min(lengthOf(a.parts), lengthOf(b.parts)));
}

/** At true costs: hardly longer than the shortest between its own ends, and its middle part no detour. */
function isSound(trip: Trip, way: JudgedWay, overlay: Overlay): boolean {
  const edges = way.detour.parts.map(({ directed }) => directed);
  const last = edges.length - 1;
  if (last < 1) return true;
  const whole = costOf(trip, edges);
  if (whole > MOST_STRETCH * shortest(trip, overlay, edges[0]!, edges[last]!)) return false;
  const [from, to] = middle(trip, edges, whole);
  return (
    to - from < 1 ||
    costOf(trip, edges.slice(from, to + 1)) <= shortest(trip, overlay, edges[from]!, edges[to]!) + 50
  );
}

/** First and last index of the part around the middle that is LOCAL_SHARE of the whole. */
function middle(trip: Trip, edges: readonly number[], whole: number): [number, number] {
  let sum = 0;
  let [from, to] = [0, edges.length - 1];
  for (const [i, edge] of edges.entries()) {
    if (sum < (whole * (1 - LOCAL_SHARE)) / 2) from = i;
    sum += trip.field.costs.costTenths(edge);
    if (sum <= (whole * (1 + LOCAL_SHARE)) / 2) to = i;
  }
  return [from, Math.max(from, to)];
}

/** Driving edges one after another, the first one driven, turns counted. */
function costOf(trip: Trip, edges: readonly number[]): number {
  return edges.slice(1).reduce((sum, edge) => sum + trip.field.costs.costTenths(edge), 0);
}

function shortest(trip: Trip, overlay: Overlay, from: number, to: number): number {
  const terms: Terms = { ferries: trip.terms.ferries };
  const question: Question = {
    field: trip.field,
    terms,
    overlay,
    sources: [{ state: from, layer: LAYER.between, costTenths: 0, timeTenths: 0 }],
    targets: [
      {
        state: to,
        layers: new Array<boolean>(LAYERS).fill(true),
        restTenths: trip.field.costs.costTenths(to),
      },
    ],
    lookUp: trip.input.check.lookUp,
  };
  const found = searchJudged(question);
  if (found.states === undefined) return Number.POSITIVE_INFINITY;
  return costOf(
    trip,
    found.states.map((state) => trip.field.costs.graph.edgeOf[state]!),
  );
}
