import { dayOf } from '../../day/day-of.ts';
import { meetStops, withStays } from '../../day/meet-stops.ts';
import type { ServiceOnWay } from '../../day/service.ts';
import type { Drive } from '../../drive/drive.ts';
import { timesOf } from '../../drive/times/times-of.ts';
import { given } from '../../given.ts';
import type { Day } from '../../report/day.ts';
import { gravestFirst } from '../../report/level.ts';
import { pointName } from '../../services/point.ts';
import { admissionOf, sayUnknownOffer } from '../../services/say-point.ts';
import { lengthIn } from '../../units/in-units.ts';
import { clip } from '../../units/text.ts';
import { splice } from '../along/splice.ts';
import { tellWay } from '../past/tell-way.ts';
import type { Trip } from '../past/trip.ts';
import { canopyOver } from './canopy-over.ts';
import type { Reached } from './reach.ts';

/** From here on the last metres to the place are told. */
const WALK_FROM_M = 60;

/** A place that is reached, as it is told: with the day as it would be. */
export function tellService(trip: Trip, reached: Reached): ServiceOnWay {
  const { candidate, snapped, stop, judged, extraS } = reached;
  const { point, offers, nearM } = candidate;
  const { check } = trip.input;
  const drive =
    judged === undefined
      ? trip.drive
      : splice(trip.drive, judged.detour, check.roads, trip.field.costs.graph);
  const day = dayWith(trip, drive, reached);
  const met = day.stops.find(
    ({ osm, atM }) => osm?.id === point.osm.id && Math.abs(atM - (stop.atM ?? 0)) < 100,
  );
  return {
    osm: { ...point.osm },
    name: pointName(point),
    lat: point.lat,
    lon: point.lon,
    offers: offers.map((offer) => ({ ...offer })),
    say: [...sayWorst(judged), ...sayOf(trip, reached), ...sayHours(point.tags['opening_hours'], met?.open)],
    nearM,
    awayM: snapped.awayM,
    ...(judged !== undefined && { way: wayTold(trip, judged) }),
    extraS,
    stop,
    ...given({
      arriveAt: met?.arriveAt,
      latestLeaveAt: met?.latestLeaveAt,
      open: met?.open,
      spareS: day.end.spareS,
    }),
  };
}

/** What the verdict of the way there is about. */
function sayWorst(judged: Reached['judged']): string[] {
  const worst = gravestFirst(judged?.findings ?? []).find(
    ({ folded, level }) => folded !== true && level !== 'care',
  );
  return worst === undefined ? [] : [`On the way there: ${worst.say} ${worst.advice}`.trim()];
}

function wayTold(trip: Trip, judged: NonNullable<Reached['judged']>): NonNullable<ServiceOnWay['way']> {
  const { findingIds: _, findings: __, roads: ___, ...way } = tellWay(trip, judged, []);
  return way;
}

function dayWith({ input: { check }, units }: Trip, drive: Drive, { stop }: Reached): Day {
  const { roads, card, country, leaving, day } = check;
  const plan = { ...day, stops: [...(day?.stops ?? []), stop] };
  const met = meetStops(plan, drive, roads);
  const times = withStays(timesOf(drive, roads, card, country), met);
  return dayOf({ units, plan, met, drive, roads, times, leaving, country });
}

function sayOf(
  { input: { check }, units }: Trip,
  { candidate: { point, offers }, snapped }: Reached,
): string[] {
  const canopy = canopyOver(check, point);
  const away =
    snapped.awayM > WALK_FROM_M
      ? [`The vehicle stops ${lengthIn(units, snapped.awayM)} from it; the way in from there is not checked.`]
      : [];
  return [
    ...(canopy === undefined ? [] : [canopy.say]),
    ...admissionOf(point.tags).say,
    ...offers.filter(({ is }) => is === 'unknown').map(({ kind }) => sayUnknownOffer(kind, point.tags)),
    ...away,
  ];
}

/** What is to be said of its hours where nothing tells whether it is open then. */
function sayHours(hours: string | undefined, open: ServiceOnWay['open']): string[] {
  if (hours === undefined) return ['Its hours are not mapped.'];
  return open === undefined ? [`Its hours as mapped: ${clip(hours, 100)}.`] : [];
}
