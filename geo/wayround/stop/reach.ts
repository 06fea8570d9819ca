import type { CheckInput } from '../../check.ts';
import type { MetStop } from '../../day/meet-stops.ts';
import type { DayStop } from '../../day/plan.ts';
import { itemAt } from '../../lists.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import { pointName, type ServicePoint } from '../../services/point.ts';
import { admissionOf } from '../../services/say-point.ts';
import { textOf } from '../../tags/text-of.ts';
import { lengthIn } from '../../units/in-units.ts';
import { type JudgedWay, judgeNearWay, judgeWay, type Lessons, learn } from '../past/judge-way.ts';
import type { Trip } from '../past/trip.ts';
import { type Snapped, snap } from '../plan/snap.ts';
import type { Candidate } from './candidates.ts';
import { canopyOver } from './canopy-over.ts';
import { type Between, findStopWay } from './find-stop-way.ts';
import { onDrive } from './on-drive.ts';

/** Searches and checks in turn, for one place. */
const MOST_TRIES = 5;
/** The vehicle may leave the drive so far before it passes a place, and meet it again so far behind. Metres. */
const WINDOW_M = 4_000;
/** A place farther from any road that serves is not reached by that road. Metres. */
const AWAY_MOST_M = 250;

/** A place reached by a way that the check lets by, or by the drive itself. */
export interface Reached {
  readonly candidate: Candidate;
  readonly snapped: Snapped;
  readonly stop: DayStop;
  readonly judged?: JudgedWay;
  readonly extraS: number;
}

export interface NotReached {
  readonly candidate: Candidate;
  readonly why: string;
}

export interface Looking {
  readonly trip: Trip;
  readonly lessons: Lessons;
  readonly stops: readonly MetStop[];
}

/** A way there and back, near which the check bars nothing; or why there is none. */
export function reach({ trip, lessons, stops }: Looking, candidate: Candidate): Reached | NotReached {
  const { point } = candidate;
  if (!admissionOf(point.tags).may) return { candidate, why: admissionOf(point.tags).say.join(' ') };
  const canopy = canopyOver(trip.input.check, point);
  if (canopy?.fits === false) return { candidate, why: canopy.say };
  const snapped = snapNear(trip, lessons, point);
  if (typeof snapped === 'string') return { candidate, why: snapped };
  const own = onDrive(trip, snapped, candidate.nearM);
  if (own !== undefined) return { candidate, snapped, stop: stopOf(candidate, snapped, own), extraS: 0 };
  const between = betweenOf(stops, candidate);
  let why = 'No road on the map leads this vehicle there and back to the drive.';
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    trip.input.check.lookUp?.();
    const way = findStopWay(trip, snapped, between, lessons.overlay);
    if (way === undefined) break;
    const stop = stopOf(candidate, snapped, way.detour.fromM + way.stopM);
    const judged = judgeNearWay(withStop(trip, stop), way.detour);
    const [bar] = judged.bars;
    if (bar === undefined) return { candidate, snapped, stop, judged, extraS: way.extraTenths / 10 };
    why = `On the way there: ${bar.say}`;
    if (!learn(trip, judged, lessons)) break;
  }
  return { candidate, why };
}

/** The way checked as a part of the whole trip. */
export function checkedWhole(trip: Trip, reached: Reached): Reached | NotReached {
  if (reached.judged === undefined) return reached;
  const judged = judgeWay(withStop(trip, reached.stop), reached.judged.detour);
  const [bar] = judged.bars;
  if (bar !== undefined)
    return { candidate: reached.candidate, why: `With the way there in the drive: ${bar.say}` };
  return { ...reached, judged, extraS: judged.extraS };
}

function snapNear(trip: Trip, { overlay }: Lessons, point: ServicePoint): Snapped | string {
  const snapped = snap(
    point,
    { field: trip.field, terms: trip.terms, overlay, sources: [], targets: [] },
    'on',
  );
  if ('none' in snapped)
    return snapped.none === 'no road'
      ? 'No road near it is on the map.'
      : 'No road near it is open to this vehicle and leads on.';
  if (snapped.awayM > AWAY_MOST_M)
    return `The nearest road that is open to this vehicle and leads on lies ${lengthIn(trip.units, snapped.awayM)} away.`;
  const { graph, roads } = trip.field.costs;
  const way = graph.way[itemAt(snapped.directed, 0) >> 1]!;
  const highway = textOf(mappedOn(roads, way), 'highway');
  return highway.startsWith('motorway')
    ? 'Only the motorway beside it is on the map, where nobody may stop.'
    : snapped;
}

/** The trip with one more stop in its day. */
function withStop(trip: Trip, stop: DayStop): Trip {
  const { check } = trip.input;
  const day: CheckInput['day'] = { ...check.day, stops: [...(check.day?.stops ?? []), stop] };
  return { ...trip, input: { ...trip.input, check: { ...check, day } } };
}

/** Between the stops before and after: a way that left one out would be another day. */
function betweenOf(stops: readonly MetStop[], { nearM }: Candidate): Between {
  const before = stops.findLast(({ atM }) => atM <= nearM)?.atM ?? 0;
  const after = stops.find(({ atM }) => atM > nearM)?.atM ?? Number.POSITIVE_INFINITY;
  return { lowM: Math.max(before, nearM - WINDOW_M), highM: Math.min(after, nearM + WINDOW_M) };
}

/** Each thing to do takes so long, and all of them together no more. Minutes. Common practice, no source. */
const EACH_MIN = 10;
const MOST_MIN = 30;

function stopOf({ point, offers }: Candidate, { at }: Snapped, atM: number): DayStop {
  const hours = point.tags['opening_hours'];
  return {
    name: pointName(point).slice(0, 200),
    lat: at.lat,
    lon: at.lon,
    atM,
    stayMin: Math.min(MOST_MIN, EACH_MIN * offers.length),
    services: offers.map(({ kind }) => kind),
    osm: { ...point.osm },
    ...(hours !== undefined && { hours: hours.slice(0, 1000) }),
  };
}
