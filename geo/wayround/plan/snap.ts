import { shareOf } from '../../earth/between.ts';
import type { Place } from '../../earth/sphere.ts';
import { given } from '../../given.ts';
import { roadName } from '../../rules/places.ts';
import { builtFor } from '../../tags/road-class.ts';
import { OPEN } from '../price/judged.ts';
import { firstLayer, LAYER, LAYERS } from '../search/layers.ts';
import { Mover } from '../search/mover.ts';
import type { Field, Question } from '../search/question.ts';

/** A place put on a road: on one directed edge or on both of its directions. */
export interface Snapped {
  /** directed edges that this vehicle may drive there */
  readonly directed: readonly number[];
  /** metres along the edge in its drawn order */
  readonly atM: number;
  /** from the place asked for, metres */
  readonly awayM: number;
  readonly at: Place;
  /** a nearer road, which is closed to this vehicle */
  readonly nearer?: ClosedRoad;
}

/** A road that the vehicle may not use, as it is told. */
export interface ClosedRoad {
  readonly name: string | undefined;
  /** from the place asked for, metres */
  readonly awayM: number;
  /** what closes it, in a sentence */
  readonly say: string;
}

/** No road to put a place on: none on the map there, or none for this vehicle. */
export interface NoRoad {
  readonly none: 'no road' | 'none for us';
  /** the nearest of those closed to it */
  readonly nearest?: ClosedRoad;
}

/** A place farther from any road is off the map. Metres. */
export const FARTHEST_M = 4000;
/** Rings in which a road is looked for. Metres. */
const RINGS_M = [60, 250, 1000, FARTHEST_M];
/** A road leads somewhere when so many moves can be made from it, or to it. */
const LEADS_MOVES = 1000;
/** In a small map that share of all there is counts as somewhere. */
const LEADS_SHARE = 0.1;

/**
 * The nearest road that this vehicle may use and, where that is asked, that leads somewhere: not an island, a yard shut
 * off, a stub behind a bar. @param question whose terms hold
 */
export function snap(place: Place, question: Question, leads?: 'on' | 'from'): Snapped | NoRoad {
  const { costs } = question.field;
  let met = false;
  let closed: ClosedRoad | undefined;
  for (const ring of RINGS_M) {
    const near = costs.roads.index.near(place.lat, place.lon, ring).sort((a, b) => a.distanceM - b.distanceM);
    const tried = new Set<number>();
    for (const { way, seg, t, distanceM } of near) {
      met = true;
      const ref = costs.roads.ways.start[way]! + seg;
      const edge = costs.graph.edgeOfSegment[ref]!;
      if (tried.has(edge)) continue;
      tried.add(edge);
      const directed = [2 * edge, 2 * edge + 1].filter((each) => isOpen(question, each));
      if (directed.length === 0) closed ??= closedRoad(question, edge, distanceM);
      if (!directed.some((each) => serves(question, each, leads))) continue;
      const { alongM, firstRef } = costs.graph;
      const fromM = alongM[ref]! - alongM[firstRef[edge]!]!;
      const atM = fromM + t * (alongM[ref + 1]! - alongM[ref]!);
      const at = placeOn(question.field, edge, atM);
      return { directed, atM, awayM: distanceM, at, ...given({ nearer: closed }) };
    }
  }
  return { none: met ? 'none for us' : 'no road', ...given({ nearest: closed }) };
}

/** A road for motor vehicles that is closed to this one both ways; paths and the like are passed over without a word. */
function closedRoad({ field: { costs } }: Question, edge: number, awayM: number): ClosedRoad | undefined {
  const tags = costs.judge.tagsOf(costs.graph.way[edge]!);
  if (builtFor(tags).kind !== 'motor') return undefined;
  const kinds = [costs.kind(2 * edge), costs.kind(2 * edge + 1)];
  if (kinds.some(({ open }) => open !== OPEN.never)) return undefined;
  const say = kinds.flatMap(({ bars }) => bars).find(({ kind }) => kind !== 'one-way')?.say;
  return say === undefined ? undefined : { name: roadName(tags), awayM, say };
}

function isOpen({ field: { costs } }: Question, directed: number): boolean {
  costs.settle(directed);
  const kind = costs.kind(directed);
  return kind.open !== OPEN.never && !kind.ferry;
}

/** Whether a road leads somewhere, in one of its directions; a drive may begin or end there headed either way. */
function serves(question: Question, directed: number, leads: 'on' | 'from' | undefined): boolean {
  if (leads === undefined) return true;
  return leads === 'on' ? leadsOn(question, directed) : leadsFrom(question, directed);
}

/** How far a road has to lead in this map. */
function somewhere({ costs }: Field): number {
  return Math.min(LEADS_MOVES, Math.floor(LEADS_SHARE * costs.graph.edgeCount));
}

function leadsOn(question: Question, directed: number): boolean {
  return reachedFrom(question, directed) === undefined;
}

/**
 * The directed edges that moves lead to from a road, the road itself among them; undefined where they lead somewhere:
 * to more than that.
 */
export function reachedFrom(question: Question, directed: number): Set<number> | undefined {
  const { graph } = question.field.costs;
  const mover = new Mover(question);
  const most = somewhere(question.field);
  const seen = new Set([directed * LAYERS + firstLayer(question.field.costs.kind(directed).ground)]);
  for (const key of seen) {
    if (seen.size > most) return undefined;
    const state = Math.floor(key / LAYERS);
    for (let turn = graph.turnStart[state]!; turn < graph.turnStart[state + 1]!; turn++)
      if (mover.make(turn, key % LAYERS, 0)) seen.add(graph.turnTo[turn]! * LAYERS + mover.layer);
  }
  if (seen.size > most) return undefined;
  return new Set(Array.from(seen, (key) => graph.edgeOf[Math.floor(key / LAYERS)]!));
}

/** Whether a road can be come to from somewhere; what only the road's own end run allows counts. */
function leadsFrom(question: Question, directed: number): boolean {
  const { graph } = question.field.costs;
  const mover = new Mover(question);
  const seen = new Set(Array.from({ length: LAYERS }, (_, layer) => directed * LAYERS + layer));
  for (const key of seen) {
    if (seen.size > somewhere(question.field) + LAYERS) return true;
    const state = Math.floor(key / LAYERS);
    for (let into = graph.inStart[state]!; into < graph.inStart[state + 1]!; into++) {
      const turn = graph.inTurn[into]!;
      const from = graph.turnFrom[turn]!;
      // the layers of a start are no place to come from
      if (mover.make(turn, LAYER.between, 0) && mover.layer === key % LAYERS)
        seen.add(from * LAYERS + LAYER.between);
      for (const layer of [LAYER.siteEnd, LAYER.restrictedEnd])
        if (mover.make(turn, layer, 0) && mover.layer === key % LAYERS) seen.add(from * LAYERS + layer);
    }
  }
  return seen.size > somewhere(question.field) + LAYERS;
}

function placeOn({ costs }: Field, edge: number, atM: number): Place {
  const { alongM, firstRef, lastRef } = costs.graph;
  const refs = costs.roads.ways.refs;
  const first = firstRef[edge]!;
  let ref = first;
  while (ref + 1 < lastRef[edge]! && alongM[ref + 1]! - alongM[first]! < atM) ref++;
  const t = shareOf(alongM[first]! + atM, alongM[ref]!, alongM[ref + 1]!);
  const [a, b] = [costs.judge.placeOf(refs[ref]!), costs.judge.placeOf(refs[ref + 1]!)];
  return { lat: a.lat + t * (b.lat - a.lat), lon: a.lon + t * (b.lon - a.lon) };
}
