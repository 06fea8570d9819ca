import { type CountrySpan, countriesAlong } from '../../country/country-of.ts';
import { mix, shareOf } from '../../earth/between.ts';
import { spanHolding } from '../../earth/bisect.ts';
import { given } from '../../given.ts';
import { wayAlong } from '../../graph/road-graph.ts';
import { lastOrZero } from '../../lists.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import { type Roads, WAY_KIND } from '../../roads/roads.ts';
import type { Drive, Leg } from '../drive.ts';
import { oncePerDrive } from '../once-per-drive.ts';
import { bendSpeeds } from './bend-speeds.ts';
import { ferrySpeed } from './ferry-speed.ts';
import { hasSignals, nodeDelay } from './node-delay.ts';
import { OFF_MAP_KMH, type TimeNote } from './say-time-note.ts';
import type { SpeedVehicle } from './speed-band.ts';
import { type RoadSpeed, speedRemembered } from './speed-for.ts';
import { type SpeedBounds, stepSeconds } from './step-seconds.ts';
import { type DriveTrace, traceDrive } from './trace.ts';

/** Giving way when turning off one road into another, seconds. Common practice, no source. */
const TURN_WAIT_S = 4;
/** Signals within this behind others belong to the same junction, which is waited at once. Common practice, no source. */
const JUNCTION_M = 60;
/** Slower than this, m/s, a change of road is a turn at a junction. */
const TURN_MPS = 8;

interface TimetableOptions {
  readonly vehicle: SpeedVehicle;
  /** stands in where the place tells no country (`countryOf` codes) */
  readonly country?: string;
  /** whether a way lies in a town, where the caller knows */
  readonly urban?: (way: number) => boolean | undefined;
}

/** Speeds on one leg of the drive. */
export interface LegSpeed extends RoadSpeed {
  readonly fromM: number;
  readonly toM: number;
}

/** A stay on the way; the place itself is reached before it. */
export interface Stay {
  readonly atM: number;
  readonly stayS: number;
}

/** When each place of a drive is passed, counted from setting off. */
export interface Timetable {
  /** metres along the drive, rising; empty for a drive without length */
  readonly atM: Float64Array;
  /** seconds of driving since setting off at each of `atM`, on arrival there */
  readonly seconds: Float64Array;
  /** of driving alone */
  readonly totalS: number;
  /** where the vehicle stands still by choice, in driving order */
  readonly stays?: readonly Stay[];
  readonly countries: readonly CountrySpan[];
  /** in driving order; legs off the map and gaps have none */
  readonly speeds: readonly LegSpeed[];
  /** every default that was used */
  readonly notes: readonly TimeNote[];
}

/**
 * The timetable of a matched drive for one vehicle: general and mapped limits, what is likely driven beneath
 * them, bends, junction waits, ferries. Clear roads and no breaks; a planning figure, not a promise.
 * Linear in the drive's length.
 */
export function timetable(drive: Drive, roads: Roads, options: TimetableOptions): Timetable {
  const { trace, countries } = countriesOnDrive(drive, roads);
  const work = startTiming(drive, roads, trace);
  let country = 0;
  for (let i = 0; i < work.steps; ) {
    const fromM = trace.atM[i]!;
    while (country < countries.length - 1 && fromM >= countries[country]!.toM) country++;
    i = timeLeg(work, i, { ...options, country: countries[country]?.country ?? options.country });
  }
  const legS = stepSeconds(work.bounds);
  const seconds = new Float64Array(trace.atM.length);
  for (let i = 0; i < work.steps; i++) seconds[i + 1] = seconds[i]! + work.waitS[i]! + legS[i]!;
  return {
    atM: trace.atM,
    seconds,
    totalS: lastOrZero(seconds),
    countries,
    speeds: work.speeds,
    notes: [...work.notes, ...closingNotes(drive, work.unmappedM)],
  };
}

/** The drive as one row of positions, and the countries it lies in. */
const countriesOnDrive = oncePerDrive((drive, roads) => {
  const trace = traceDrive(drive, roads);
  return { trace, countries: countriesAlong(trace) };
});

/** A timetable as it grows, leg by leg. */
interface Timing {
  readonly drive: Drive;
  readonly roads: Roads;
  readonly trace: DriveTrace;
  readonly steps: number;
  readonly bounds: SpeedBounds;
  /** seconds stood still before each step */
  readonly waitS: Float64Array;
  readonly speeds: LegSpeed[];
  readonly notes: Set<string>;
  /** metres without a mapped limit */
  unmappedM: number;
  /** metres along the drive of the signals last waited at */
  signalsM: number;
}

function startTiming(drive: Drive, roads: Roads, trace: DriveTrace): Timing {
  const steps = Math.max(0, trace.atM.length - 1);
  return {
    drive,
    roads,
    trace,
    steps,
    bounds: {
      lengthM: Float64Array.from({ length: steps }, (_, i) => trace.atM[i + 1]! - trace.atM[i]!),
      cruiseMps: new Float64Array(steps),
      steady: new Uint8Array(steps),
      passMps: bendSpeeds(trace),
    },
    waitS: new Float64Array(steps),
    speeds: [],
    notes: new Set(),
    unmappedM: 0,
    signalsM: Number.NEGATIVE_INFINITY,
  };
}

/** Takes in the leg that step i begins; the first step after it. */
function timeLeg(work: Timing, i: number, options: LegOptions): number {
  const { drive, roads, trace, steps, bounds, speeds, notes } = work;
  const legIndex = trace.leg[i]!;
  const moving = movingOn(drive.legs[legIndex]!, roads, options);
  let end = i;
  for (; end < steps && trace.leg[end] === legIndex; end++) {
    bounds.cruiseMps[end] = moving.kmh / 3.6;
    bounds.steady[end] = moving.steady ? 1 : 0;
    if (!moving.steady) work.waitS[end] = delayAt(work, end);
  }
  for (const note of moving.notes) notes.add(note);
  if (moving.road) {
    const [fromM, toM] = [trace.atM[i]!, trace.atM[end]!];
    speeds.push({ ...moving.road, fromM, toM });
    if (!moving.road.mapped) work.unmappedM += toM - fromM;
  }
  return end;
}

/** Seconds since setting off when a place is reached, stays on the way to it counted; before the start 0, past the end all. */
export function secondsAt(times: Timetable, m: number): number {
  let seconds = drivenAt(times, m);
  for (const { atM, stayS } of times.stays ?? []) if (atM < m) seconds += stayS;
  return seconds;
}

/** Seconds of driving alone until a place is reached. */
export function drivenAt({ atM, seconds, totalS }: Timetable, m: number): number {
  const count = atM.length;
  if (count === 0 || !(m > atM[0]!)) return 0;
  if (m >= atM[count - 1]!) return totalS;
  const i = spanHolding(atM, m);
  return mix(seconds[i]!, seconds[i + 1]!, shareOf(m, atM[i]!, atM[i + 1]!));
}

/** The country is the leg's own. */
interface LegOptions extends Omit<TimetableOptions, 'country'> {
  readonly country: string | undefined;
}

interface Moving {
  readonly kmh: number;
  readonly steady: boolean;
  readonly road?: RoadSpeed;
  readonly notes: readonly string[];
}

function movingOn(leg: Leg, roads: Roads, options: LegOptions): Moving {
  if (leg.kind !== 'stretch') return { kmh: OFF_MAP_KMH, steady: true, notes: [] };
  const tags = mappedOn(roads, leg.way);
  if (roads.ways.kind[leg.way] === WAY_KIND.ferry) {
    const ferry = ferrySpeed(tags, lastOrZero(wayAlong(roads, leg.way)));
    return { kmh: ferry.kmh, steady: true, notes: [ferry.note] };
  }
  const urban = options.urban?.(leg.way);
  const road = speedRemembered(tags, options.country, options.vehicle, {
    forward: leg.forward,
    ...given({ urban }),
  });
  return { kmh: road.kmh, steady: false, road, notes: road.notes };
}

/** Seconds waited before step i; lowers the speed at its first position to what the node there allows. */
function delayAt(work: Timing, i: number): number {
  const { drive, roads, trace, bounds } = work;
  const node = trace.node[i]!;
  const tags = (node < 0 ? undefined : roads.nodes.tags.get(node)) ?? {};
  const before = i === 0 ? undefined : drive.legs[trace.leg[i - 1]!];
  const after = drive.legs[trace.leg[i]!];
  if (before?.kind !== 'stretch' || after?.kind !== 'stretch') return 0;
  const { forward } = before;
  const waited = trace.atM[i]! - work.signalsM < JUNCTION_M;
  if (!waited && hasSignals({ tags, forward })) work.signalsM = trace.atM[i]!;
  const turning = before.way !== after.way && bounds.passMps[i]! < TURN_MPS;
  const { waitS, passKmh } = nodeDelay({ tags, forward }, { waited });
  bounds.passMps[i] = Math.min(bounds.passMps[i]!, passKmh / 3.6);
  return Math.max(turning && !waited ? TURN_WAIT_S : 0, waitS);
}

function closingNotes(drive: Drive, unmappedM: number): TimeNote[] {
  const offMapM = drive.legs.reduce((sum, leg) => sum + (leg.kind === 'offMap' ? leg.toM - leg.fromM : 0), 0);
  const gaps = drive.legs.filter((leg) => leg.kind === 'gap').length;
  const notes: TimeNote[] = [];
  if (unmappedM > 0) notes.push({ kind: 'no limit mapped', lengthM: unmappedM });
  if (offMapM > 0) notes.push({ kind: 'off the map', lengthM: offMapM });
  if (gaps > 0)
    notes.push(
      `The route breaks ${gaps === 1 ? 'once' : `${gaps} times`}: no time is counted for what lies between.`,
    );
  notes.push('Times assume clear roads, no queues and no breaks.');
  return notes;
}
