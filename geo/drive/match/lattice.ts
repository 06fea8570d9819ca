import { distanceM } from '../../earth/sphere.ts';
import { ROAD_CLASS } from '../../graph/road-class.ts';
import type { RoadGraph } from '../../graph/road-graph.ts';
import type { Roads } from '../../roads/roads.ts';
import { type Candidate, findCandidates } from './find-candidates.ts';
import { CLASS_HANDICAP_M, type MatchSettings } from './match-settings.ts';
import type { Positions } from './thin-positions.ts';
import { type WayPrices, wayPrices } from './way-prices.ts';

/** What is matched, to what, by which figures. */
interface MatchInput {
  readonly positions: Positions;
  readonly roads: Roads;
  readonly graph: RoadGraph;
  readonly settings: MatchSettings;
}

/** A match laid out: what each position may stand for. */
export interface Matching extends MatchInput {
  readonly lattice: Lattice;
  /** what guides the way between far positions */
  readonly prices: WayPrices;
}

/**
 * "Directed edges" of the three states of being on no mapped road: before the first road, between roads, after the
 * last. Yards and pitches are seldom mapped, so the outer two are entered and left lightly.
 */
export const LEAD = -1;
const BETWEEN = -2;
const TAIL = -3;

/**
 * The states of the hidden Markov model: for every position each direction of each candidate, and last the
 * states LEAD, BETWEEN, TAIL. States of position i are pointStart[i] .. pointStart[i + 1].
 */
export interface Lattice {
  readonly points: number;
  readonly pointStart: readonly number[];
  /** directed edge; negative off the map */
  readonly directed: readonly number[];
  /** metres along the directed edge in its own direction */
  readonly offsetM: readonly number[];
  readonly distanceM: readonly number[];
  /** negative log-likelihood of the position given the state */
  readonly emission: readonly number[];
  /** straight distance from position i to i + 1 */
  readonly gapM: readonly number[];
}

/** Widest look for a road about a lone position of a sparse route, which may name a place beside the road. */
export const WIDEST_M = 300;
/** Boats keep less to their line on the map than cars. */
const FERRY_RADIUS_M = 500;
const FERRY_SIGMA_M = 60;

/** Lays out what each position may stand for: places on the roads in reach, and off them. */
export function layOut(input: MatchInput): Matching {
  const { positions, roads, graph, settings } = input;
  return { ...input, lattice: buildLattice(input), prices: wayPrices(roads, graph, positions, settings) };
}

interface States {
  readonly directed: number[];
  readonly offsetM: number[];
  readonly distanceM: number[];
  readonly emission: number[];
}

function buildLattice(input: MatchInput): Lattice {
  const { positions, settings } = input;
  const points = positions.lat.length;
  const gapM: number[] = [];
  for (let i = 0; i + 1 < points; i++)
    gapM.push(distanceM(positions.lat[i]!, positions.lon[i]!, positions.lat[i + 1]!, positions.lon[i + 1]!));
  const states: States = { directed: [], offsetM: [], distanceM: [], emission: [] };
  const pointStart = [0];
  for (let i = 0; i < points; i++) {
    settings.lookUp?.();
    const alone = (gapM[i - 1] ?? Infinity) > settings.sparseM && (gapM[i] ?? Infinity) > settings.sparseM;
    addOnRoads(states, lookAround(input, i, { alone }), input);
    const off = squareError(settings.offRoadM, settings.sigmaM);
    for (const outside of [LEAD, BETWEEN, TAIL]) {
      states.directed.push(outside);
      states.offsetM.push(0);
      states.distanceM.push(0);
      states.emission.push(off);
    }
    pointStart.push(states.directed.length);
  }
  return { points, pointStart, gapM, ...states };
}

/** Both directions of each candidate, the candidates nearest first. */
function addOnRoads(states: States, found: readonly Candidate[], { graph, settings }: MatchInput): void {
  const nearestM = found[0]?.distanceM ?? 0;
  const sigmaM = nearestM > settings.radiusM ? nearestM / 2 : settings.sigmaM;
  for (const { edge, offsetM, distanceM } of found)
    for (const directed of [2 * edge, 2 * edge + 1]) {
      states.directed.push(directed);
      states.offsetM.push(directed % 2 === 0 ? offsetM : graph.lengthM[edge]! - offsetM);
      states.distanceM.push(distanceM);
      states.emission.push(emissionOf(distanceM, sigmaM, directed, { graph, settings }));
    }
}

/** @param alone whether the position stands far from its neighbours */
function lookAround(
  { positions, roads, graph, settings }: MatchInput,
  i: number,
  { alone }: { readonly alone: boolean },
): Candidate[] {
  const about = { lat: positions.lat[i]!, lon: positions.lon[i]! };
  const near = findCandidates(roads, graph, about, settings.radiusM);
  if (near.length > 0) return near;
  if (alone && !settings.drawn) return findCandidates(roads, graph, about, WIDEST_M);
  return findCandidates(roads, graph, about, FERRY_RADIUS_M).filter(
    ({ edge }) => graph.roadClass[edge] === ROAD_CLASS.ferry,
  );
}

function emissionOf(
  distance: number,
  sigmaM: number,
  directed: number,
  { graph, settings }: Pick<MatchInput, 'graph' | 'settings'>,
): number {
  const roadClass = graph.roadClass[directed >> 1]!;
  if (roadClass === ROAD_CLASS.ferry) return squareError(distance, Math.max(sigmaM, FERRY_SIGMA_M));
  const ofClass = CLASS_HANDICAP_M[roadClass] ?? 0;
  const ofWay = graph.wrongWay[directed] === 1 ? settings.wrongWayM : 0;
  return squareError(distance, sigmaM) + squareError(ofClass, sigmaM) + squareError(ofWay, sigmaM);
}

function squareError(distance: number, sigmaM: number): number {
  return (distance * distance) / (2 * sigmaM * sigmaM);
}
