import { distanceM } from '../../earth/sphere.ts';
import type { Roads } from '../../roads/roads.ts';
import { type Candidate, findCandidates } from './candidates.ts';
import type { RoadGraph } from './graph/graph.ts';
import { ROAD_CLASS } from './graph/road-class.ts';
import { CLASS_HANDICAP_M, type MatchSettings } from './settings.ts';
import type { Positions } from './thin.ts';

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
export function buildLattice(
  positions: Positions,
  roads: Roads,
  graph: RoadGraph,
  settings: MatchSettings,
): Lattice {
  const points = positions.lat.length;
  const gapM: number[] = [];
  for (let i = 0; i + 1 < points; i++)
    gapM.push(distanceM(positions.lat[i]!, positions.lon[i]!, positions.lat[i + 1]!, positions.lon[i + 1]!));
  const states = {
    pointStart: [0],
    directed: [] as number[],
    offsetM: [] as number[],
    distanceM: [] as number[],
    emission: [] as number[],
  };
  const add = (directed: number, offsetM: number, distance: number, emission: number) => {
    states.directed.push(directed);
    states.offsetM.push(offsetM);
    states.distanceM.push(distance);
    states.emission.push(emission);
  };
  for (let i = 0; i < points; i++) {
    const alone = (gapM[i - 1] ?? Infinity) > settings.sparseM && (gapM[i] ?? Infinity) > settings.sparseM;
    const found = lookAround(positions.lat[i]!, positions.lon[i]!, alone);
    const nearestM = found[0]?.distanceM ?? 0;
    const sigmaM = nearestM > settings.radiusM ? nearestM / 2 : settings.sigmaM;
    for (const { edge, offsetM, distanceM } of found)
      for (const directed of [2 * edge, 2 * edge + 1]) {
        const along = directed % 2 === 0 ? offsetM : graph.lengthM[edge]! - offsetM;
        add(directed, along, distanceM, emissionOf(distanceM, sigmaM, directed));
      }
    const off = squareError(settings.offRoadM, settings.sigmaM);
    for (const outside of [LEAD, BETWEEN, TAIL]) add(outside, 0, 0, off);
    states.pointStart.push(states.directed.length);
  }
  return { points, gapM, ...states };

  function lookAround(lat: number, lon: number, alone: boolean): Candidate[] {
    const near = findCandidates(roads, graph, lat, lon, settings.radiusM);
    if (near.length > 0) return near;
    if (alone && !settings.drawn) return findCandidates(roads, graph, lat, lon, WIDEST_M);
    return findCandidates(roads, graph, lat, lon, FERRY_RADIUS_M).filter(
      ({ edge }) => graph.roadClass[edge] === ROAD_CLASS.ferry,
    );
  }

  function emissionOf(distance: number, sigmaM: number, directed: number): number {
    const roadClass = graph.roadClass[directed >> 1]!;
    if (roadClass === ROAD_CLASS.ferry) return squareError(distance, Math.max(sigmaM, FERRY_SIGMA_M));
    const ofClass = CLASS_HANDICAP_M[roadClass] ?? 0;
    const ofWay = graph.wrongWay[directed] === 1 ? settings.wrongWayM : 0;
    return squareError(distance, sigmaM) + squareError(ofClass, sigmaM) + squareError(ofWay, sigmaM);
  }
}

function squareError(distance: number, sigmaM: number): number {
  return (distance * distance) / (2 * sigmaM * sigmaM);
}
