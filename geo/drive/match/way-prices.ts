import { countryOf } from '../../country/country-of.ts';
import { turnDeg } from '../../earth/angles.ts';
import { headingOnEdge } from '../../graph/place-on-edge.ts';
import { ROAD_CLASS } from '../../graph/road-class.ts';
import type { RoadGraph } from '../../graph/road-graph.ts';
import { extraPerM, type StepCosts, turnM } from '../../graph/step-costs.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import type { Roads } from '../../roads/roads.ts';
import { accessFor } from '../../tags/access.ts';
import type { Driven } from '../../tags/driven.ts';
import { ferrySpeed } from '../times/ferry-speed.ts';
import { nodeDelay } from '../times/node-delay.ts';
import { speedFor } from '../times/speed-for.ts';
import type { MatchSettings } from './match-settings.ts';
import type { Positions } from './thin-positions.ts';

/** What driving between far positions costs beyond its metres. Metres. */
export interface WayPrices {
  /** for every metre of a directed edge */
  readonly extraPerM: (directed: number) => number;
  /** for going from one directed edge into the next */
  readonly turnM: (from: number, next: number) => number;
}

/** Nothing is driven faster than this, so time told in metres at this speed is never less than the metres driven. */
const FULL_KMH = 100;
const FULL_MPS = FULL_KMH / 3.6;
/** Slowing from a town's speed to a corner's and gathering it again at 0.7 m/s², with a short wait. Common practice, no source. */
const TURN_S = 7;
/** A bend of the road is no turn. */
const TURN_DEG = 45;
/** The vehicle whose way is sought: planners ask little more. */
const VEHICLE = { grossKg: 3500 };
/** Extra metres for every one where only some may drive: a planner leads there when nothing else does. */
const PRIVATE_PER_M = 4;
const RESTRICTED_PER_M = 1;

/** The prices by which the way between far positions is sought: signs and classes of road, and time where nothing is drawn. */
export function wayPrices(
  roads: Roads,
  graph: RoadGraph,
  positions: Positions,
  { farSteps, quickest }: MatchSettings,
): WayPrices {
  const signs = signPrices(graph, farSteps);
  const lat = positions.lat[0];
  const lon = positions.lon[0];
  if (!quickest || lat === undefined || lon === undefined) return signs;
  const times = timePrices(roads, graph, countryOf(lat, lon));
  return {
    extraPerM: (directed) => signs.extraPerM(directed) + times.extraPerM(directed),
    turnM: (from, next) => signs.turnM(from, next) + times.turnM(from, next),
  };
}

function signPrices(graph: RoadGraph, steps: StepCosts): WayPrices {
  return {
    extraPerM: (directed) => extraPerM(graph, steps, directed),
    turnM: (from, next) => turnM(graph, steps, from, next),
  };
}

/** Time prices of a map in the country last asked for, kept as long as the map is. */
const priced = new WeakMap<RoadGraph, { readonly country: string | undefined; readonly prices: WayPrices }>();

function timePrices(roads: Roads, graph: RoadGraph, country: string | undefined): WayPrices {
  const known = priced.get(graph);
  if (known !== undefined && known.country === country) return known.prices;
  const prices = createTimePrices(roads, graph, country);
  priced.set(graph, { country, prices });
  return prices;
}

/** Time lost against driving on at full speed: likely speeds, lights and gates, turns. */
function createTimePrices(roads: Roads, graph: RoadGraph, country: string | undefined): WayPrices {
  const perMBySigns = new Map<string, number>();
  const count = 2 * graph.edgeCount;
  const perM = remembered(count, (directed) => {
    const driven = drivenOn(roads, graph, directed);
    const waitM = waitAlongM(roads, graph, directed) / Math.max(1, graph.lengthM[directed >> 1]!);
    if (graph.roadClass[directed >> 1] === ROAD_CLASS.ferry)
      return lostPerM(ferrySpeed(driven.tags, 0).kmh) + waitM;
    const signs = signsOf(driven);
    const before = perMBySigns.get(signs);
    const roadM = before ?? roadPerM(driven, country);
    perMBySigns.set(signs, roadM);
    return roadM + waitM;
  });
  const endWaitM = remembered(count, (directed) => waitAtM(roads, lastRef(graph, directed), directed));
  const into = remembered(count, (directed) =>
    headingOnEdge(roads, graph, directed, graph.lengthM[directed >> 1]!),
  );
  const outOf = remembered(count, (directed) => headingOnEdge(roads, graph, directed, 0));
  return {
    extraPerM: perM,
    turnM: (from, next) =>
      endWaitM(from) + (turnDeg(into(from), outOf(next)) > TURN_DEG ? TURN_S * FULL_MPS : 0),
  };
}

function drivenOn(roads: Roads, graph: RoadGraph, directed: number): Driven {
  return { tags: mappedOn(roads, graph.way[directed >> 1]!), forward: directed % 2 === 0 };
}

function roadPerM(driven: Driven, country: string | undefined): number {
  const { kmh } = speedFor(driven.tags, country, VEHICLE, { forward: driven.forward });
  return lostPerM(kmh) + accessPerM(driven);
}

/** All that is mapped but names and remarks: roads alike in it are judged once. */
function signsOf({ tags, forward }: Driven): string {
  let signs = forward ? '+' : '-';
  for (const key in tags) if (!LABEL.test(key)) signs += `${key}=${tags[key]};`;
  return signs;
}

const LABEL = /^(?:(?:alt_|old_|int_|loc_|official_)?(?:name|ref)|wiki|note|fixme)/;

function lostPerM(kmh: number): number {
  return Math.max(0, FULL_KMH / kmh - 1);
}

function accessPerM(driven: Driven): number {
  const { meaning } = accessFor(driven);
  if (meaning === 'open' || meaning === 'unknown') return 0;
  return meaning === 'private' || meaning === 'no' ? PRIVATE_PER_M : RESTRICTED_PER_M;
}

/** Waits at nodes within an edge. */
function waitAlongM(roads: Roads, graph: RoadGraph, directed: number): number {
  let sum = 0;
  for (let ref = graph.firstRef[directed >> 1]! + 1; ref < graph.lastRef[directed >> 1]!; ref++)
    sum += waitAtM(roads, ref, directed);
  return sum;
}

function waitAtM(roads: Roads, ref: number, directed: number): number {
  const tags = roads.nodes.tags.get(roads.ways.refs[ref]!);
  if (tags === undefined) return 0;
  return nodeDelay({ tags, forward: directed % 2 === 0 }, { waited: false }).waitS * FULL_MPS;
}

/** The ref at the end of a directed edge. */
function lastRef({ firstRef, lastRef: last }: RoadGraph, directed: number): number {
  return directed % 2 === 0 ? last[directed >> 1]! : firstRef[directed >> 1]!;
}

/** A table of what was worked out for a directed edge; made at the first call. */
function remembered(count: number, work: (directed: number) => number): (directed: number) => number {
  let table: Float32Array | undefined;
  return (directed) => {
    table ??= new Float32Array(count).fill(Number.NaN);
    const known = table[directed]!;
    if (!Number.isNaN(known)) return known;
    table[directed] = work(directed);
    return table[directed]!;
  };
}
