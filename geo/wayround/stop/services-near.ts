import { meetStops } from '../../day/meet-stops.ts';
import type { ServicesFound } from '../../day/service.ts';
import type { ServiceKind } from '../../services/kinds.ts';
import { pointName, type ServicePoint } from '../../services/point.ts';
import type { Lessons } from '../past/judge-way.ts';
import { notedOverlay } from '../past/settle.ts';
import { layTrip, type PastInput } from '../past/trip.ts';
import { candidatesOf } from './candidates.ts';
import { checkedWhole, type NotReached, type Reached, reach } from './reach.ts';
import { tellService } from './tell-service.ts';

/** So many are told. */
const MOST_TOLD = 12;

export interface ServicesInput extends Pick<PastInput, 'check' | 'report' | 'prefer'> {
  readonly points: readonly ServicePoint[];
  readonly wanted: readonly ServiceKind[];
}

/**
 * Places near a drive where this vehicle can see to its tanks: each reached by a way that the check of the whole trip
 * lets by, with the stop on it. Those that surely offer what is wanted first, of them the least detour.
 */
export function servicesNear(input: ServicesInput): ServicesFound {
  const trip = layTrip(input);
  const lessons: Lessons = { overlay: notedOverlay(trip), learnt: new Set(), doubtFree: false };
  const { tried, leftOut } = candidatesOf(input);
  const stops = meetStops(input.check.day ?? { stops: [] }, trip.drive, input.check.roads).stops;
  const reached: Reached[] = [];
  const not: NotReached[] = [];
  for (const candidate of tried) {
    const found = reach({ trip, lessons, stops }, candidate);
    if ('why' in found) not.push(found);
    else reached.push(found);
  }
  reached.sort(bestFirst);
  const whole: Reached[] = [];
  for (const one of reached.slice(0, MOST_TOLD)) {
    const held = checkedWhole(trip, one);
    if ('why' in held) not.push(held);
    else whole.push(held);
  }
  whole.sort(bestFirst);
  return {
    services: whole.map((one) => tellService(trip, one)),
    not: not.map(({ candidate: { point, nearM }, why }) => ({
      osm: { ...point.osm },
      name: pointName(point),
      lat: point.lat,
      lon: point.lon,
      nearM,
      why,
    })),
    leftOut: leftOut + Math.max(0, reached.length - MOST_TOLD),
  };
}

/** Where the map leaves open whether what is wanted can be had comes last; then the least detour. */
function bestFirst(a: Reached, b: Reached): number {
  const open = ({ candidate: { offers } }: Reached) => offers.filter(({ is }) => is === 'unknown').length;
  return open(a) - open(b) || a.extraS - b.extraS || a.candidate.nearM - b.candidate.nearM;
}
