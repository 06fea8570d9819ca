import type { Drive } from '../drive/drive.ts';
import { matchLengths } from '../drive/match-lengths.ts';
import { pointAt } from '../drive/point-at.ts';
import { isTimed, type OffMapOf, sayUntimed } from '../drive/times/off-map-time.ts';
import { drivenAt, secondsAt, type Timetable } from '../drive/times/timetable.ts';
import { distanceM } from '../earth/sphere.ts';
import { given } from '../given.ts';
import type { Day, StopTimes } from '../report/day.ts';
import type { Units } from '../units/in-units.ts';
import { adviceOf } from './advice.ts';
import { type ClockAlong, clockAlong, type Home, homeAt } from './clocks.ts';
import type { DayInput } from './day-input.ts';
import { dueItems } from './due.ts';
import type { MetStop } from './meet-stops.ts';
import { openAtStop } from './open-at-stop.ts';
import { MARGIN } from './plan.ts';
import { sayLate } from './say-day.ts';

/** What is left of the day from a place on: seconds. */
type Left = Pick<StopTimes, 'drivingOnS' | 'staysOnS' | 'marginOnS'>;

/**
 * The day of a drive. Times are those of the timetable with the stays; the latest leaving of a place is the return hour
 * less the driving, the later stays and the margin that are left: 15 % of that driving, and 10 min for each later stop
 * with tanks to see to. Each clock is the place's own.
 */
export function dayOf(input: DayInput): Day {
  const { plan, met, drive } = input;
  const home = homeAt(input, plan.homeBy);
  const off = offMapOf(drive);
  // of a drive that is half off the map nobody knows when it ends, nor when to leave for it
  const until: Home = isTimed(off) ? home : {};
  const clock = clockAlong(input);
  const stops = met.stops.map((_, i) => stopTimes(input, i, { clock, home: until }));
  const left = leftFrom(input.times, 0, met.stops);
  const start = {
    ...given({
      leaveAt: clock(0, input.leaving?.unixMs),
      latestLeaveAt: latest(0, left, { clock, home: until }),
    }),
    ...left,
  };
  const arriveMs = reachedMs(input, drive.lengthM, met.stops.length);
  const end = given({
    arriveAt: clock(drive.lengthM, arriveMs),
    homeBy: clock(drive.lengthM, home.unixMs),
    spareS:
      home.unixMs === undefined || arriveMs === undefined
        ? undefined
        : Math.floor((home.unixMs - arriveMs) / 1000 - left.marginOnS),
  });
  const timed = { start, stops, end };
  const elsewhere = endsElsewhere(input);
  return {
    margin: { drivingShare: MARGIN.drivingShare, perServiceS: MARGIN.perServiceMin * 60 },
    ...timed,
    due: dueItems(timed, { ...plan, elsewhere }),
    advice: adviceOf(input, clock),
    missed: met.missed.map(({ name, lat, lon }) => ({ name, lat, lon })),
    notes: [
      ...(home.note === undefined ? [] : [home.note]),
      ...sayNoTimes(off, input.units),
      ...(plan.homeBy !== undefined && elsewhere ? [ENDS_ELSEWHERE] : []),
      ...sayLate(timed),
      ...sayMissed(met.missed.length),
    ],
  };
}

interface Clocks {
  readonly clock: ClockAlong;
  readonly home: Home;
}

function stopTimes(input: DayInput, i: number, clocks: Clocks): StopTimes {
  const { stops } = input.met;
  const met = stops[i] as MetStop;
  const { name, lat, lon, stayMin, services = [], osm } = met.stop;
  const left = leftFrom(input.times, met.atM, stops.slice(i + 1));
  const arriveMs = reachedMs(input, met.atM, i);
  const leaveMs = arriveMs === undefined ? undefined : arriveMs + stayMin * 60_000;
  return {
    name,
    lat,
    lon,
    atM: met.atM,
    stayS: stayMin * 60,
    services: [...services],
    ...given({
      osm,
      arriveAt: clocks.clock(met.atM, arriveMs),
      leaveAt: clocks.clock(met.atM, leaveMs),
      latestLeaveAt: latest(met.atM, left, clocks),
      open: openAtStop(input, met, arriveMs),
    }),
    ...left,
  };
}

function latest(m: number, left: Left, { clock, home }: Clocks): string | undefined {
  if (home.unixMs === undefined) return undefined;
  return clock(m, home.unixMs - 1000 * (left.drivingOnS + left.staysOnS + left.marginOnS));
}

/** @param later stops after the place */
function leftFrom(times: Timetable, m: number, later: readonly MetStop[]): Left {
  const drivingOnS = times.totalS - drivenAt(times, m);
  const withTanks = later.filter(({ stop }) => (stop.services ?? []).length > 0).length;
  return {
    drivingOnS,
    staysOnS: later.reduce((sum, { stop }) => sum + stop.stayMin * 60, 0),
    marginOnS: MARGIN.drivingShare * drivingOnS + MARGIN.perServiceMin * 60 * withTanks,
  };
}

/** When a place is come to, the stays of so many stops before it behind: several may be at one place. */
function reachedMs({ drive, times, leaving, met }: DayInput, m: number, before: number): number | undefined {
  if (leaving === undefined || !isTimed(offMapOf(drive))) return undefined;
  const here = met.stops.slice(0, before).filter(({ atM }) => atM >= m);
  const staysS = here.reduce((sum, { stop }) => sum + stop.stayMin * 60, 0);
  return leaving.unixMs + 1000 * (secondsAt(times, m) + staysS);
}

function offMapOf(drive: Drive): OffMapOf {
  return { match: matchLengths(drive), route: drive };
}

function sayNoTimes(off: OffMapOf, units: Units): string[] {
  const why = sayUntimed(off, units);
  return why === undefined
    ? []
    : [`No time on this drive is known: ${why}. Get a map that covers it before you promise a return hour.`];
}

/** A place so near is the same yard. */
const SAME_PLACE_M = 1000;

/** The return hour is for the drive's end: where that is elsewhere, the way back is not in it. */
const ENDS_ELSEWHERE =
  'This drive does not end where it starts: the times are for its end. The way back is not in them.';

function endsElsewhere({ drive, roads }: DayInput): boolean {
  const [from, to] = [pointAt(drive, roads, 0), pointAt(drive, roads, drive.lengthM)];
  return (
    from !== undefined && to !== undefined && distanceM(from.lat, from.lon, to.lat, to.lon) > SAME_PLACE_M
  );
}

function sayMissed(count: number): string[] {
  if (count === 0) return [];
  return [
    count === 1
      ? 'One stop does not lie on this drive and is not counted.'
      : `${count} stops do not lie on this drive and are not counted.`,
  ];
}
