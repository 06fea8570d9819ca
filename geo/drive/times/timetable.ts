import { type CountrySpan, countriesAlong } from '../../country/country-of.ts';
import { given } from '../../given.ts';
import { type Roads, WAY_KIND } from '../../roads/roads.ts';
import type { Drive, Leg } from '../drive.ts';
import { bendSpeeds } from './bends.ts';
import { ferrySpeed } from './ferry-time.ts';
import { nodeDelay } from './node-delay.ts';
import { runSeconds } from './run-time.ts';
import type { SpeedVehicle } from './speed-band.ts';
import { type RoadSpeed, speedFor } from './speed-for.ts';
import { type DriveTrace, traceDrive, wayAlongM } from './trace.ts';

/** Where no road is mapped: a farm track or a car park, at best. Common practice, no source. */
const OFF_MAP_KMH = 20;
/** Giving way when turning off one road into another, seconds. Common practice, no source. */
const TURN_WAIT_S = 4;
/** Slower than this, m/s, a change of road is a turn at a junction. */
const TURN_MPS = 8;

export interface TimetableOptions {
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

/** When each place of a drive is passed, counted from setting off. */
export interface Timetable {
  /** metres along the drive, rising; empty for a drive without length */
  readonly atM: Float64Array;
  /** seconds since setting off at each of `atM`, on arrival there */
  readonly seconds: Float64Array;
  readonly totalS: number;
  readonly countries: readonly CountrySpan[];
  /** in driving order; legs off the map and gaps have none */
  readonly speeds: readonly LegSpeed[];
  /** every default that was used, in sentences */
  readonly notes: readonly string[];
}

/**
 * The timetable of a matched drive for one vehicle: general and mapped limits, what is likely driven beneath
 * them, bends, junction waits, ferries. Clear roads and no breaks; a planning figure, not a promise.
 * Linear in the drive's length.
 */
export function timetable(drive: Drive, roads: Roads, options: TimetableOptions): Timetable {
  const trace = traceDrive(drive, roads);
  const countries = countriesAlong(trace);
  const pieces = Math.max(0, trace.atM.length - 1);
  const notes = new Set<string>();
  const speeds: LegSpeed[] = [];
  const run = {
    lengthM: Float64Array.from({ length: pieces }, (_, i) => trace.atM[i + 1]! - trace.atM[i]!),
    cruiseMps: new Float64Array(pieces),
    steady: new Uint8Array(pieces),
    passMps: bendSpeeds(trace),
  };
  const waitS = new Float64Array(pieces);

  let unmappedM = 0;
  let country = 0;
  for (let i = 0; i < pieces; ) {
    const legIndex = trace.leg[i]!;
    const leg = drive.legs[legIndex] as Leg;
    const fromM = trace.atM[i]!;
    while (country < countries.length - 1 && fromM >= (countries[country] as CountrySpan).toM) country++;
    const here = countries[country]?.country ?? options.country;
    const moving = movingOn(leg, roads, here, options);
    let end = i;
    for (; end < pieces && trace.leg[end] === legIndex; end++) {
      run.cruiseMps[end] = moving.kmh / 3.6;
      run.steady[end] = moving.steady ? 1 : 0;
      if (!moving.steady) waitS[end] = delayAt(trace, roads, drive, end, run.passMps);
    }
    const toM = trace.atM[end]!;
    for (const note of moving.notes) notes.add(note);
    if (moving.road) {
      speeds.push({ ...moving.road, fromM, toM });
      if (!moving.road.mapped) unmappedM += toM - fromM;
    }
    i = end;
  }

  const legS = runSeconds(run);
  const seconds = new Float64Array(trace.atM.length);
  for (let i = 0; i < pieces; i++) seconds[i + 1] = seconds[i]! + waitS[i]! + legS[i]!;
  return {
    atM: trace.atM,
    seconds,
    totalS: seconds.at(-1) ?? 0,
    countries,
    speeds,
    notes: [...notes, ...closingNotes(drive, unmappedM)],
  };
}

/** Seconds since setting off when a place is reached; before the start 0, past the end the total. */
export function secondsAt({ atM, seconds, totalS }: Timetable, m: number): number {
  const count = atM.length;
  if (count === 0 || !(m > atM[0]!)) return 0;
  if (m >= atM[count - 1]!) return totalS;
  let low = 0;
  let high = count - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (atM[middle]! <= m) low = middle;
    else high = middle;
  }
  const t = (m - atM[low]!) / (atM[high]! - atM[low]!);
  return seconds[low]! + t * (seconds[high]! - seconds[low]!);
}

interface Moving {
  readonly kmh: number;
  readonly steady: boolean;
  readonly road?: RoadSpeed;
  readonly notes: readonly string[];
}

function movingOn(leg: Leg, roads: Roads, country: string | undefined, options: TimetableOptions): Moving {
  if (leg.kind !== 'stretch') return { kmh: OFF_MAP_KMH, steady: true, notes: [] };
  const tags = roads.ways.tags[leg.way] ?? {};
  if (roads.ways.kind[leg.way] === WAY_KIND.ferry) {
    const ferry = ferrySpeed(tags, wayAlongM(roads, leg.way).at(-1) ?? 0);
    return { kmh: ferry.kmh, steady: true, notes: [ferry.note] };
  }
  const urban = options.urban?.(leg.way);
  const road = speedFor(tags, country, options.vehicle, {
    forward: leg.forward,
    ...given({ urban }),
  });
  return { kmh: road.kmh, steady: false, road, notes: road.notes };
}

/** Seconds waited before piece i; lowers the speed at its first position to what the node there allows. */
function delayAt(trace: DriveTrace, roads: Roads, drive: Drive, i: number, passMps: Float64Array): number {
  const node = trace.node[i]!;
  const tags = node < 0 ? undefined : roads.nodes.tags.get(node);
  const before = i === 0 ? undefined : drive.legs[trace.leg[i - 1]!];
  const after = drive.legs[trace.leg[i]!];
  if (before?.kind !== 'stretch' || after?.kind !== 'stretch') return 0;
  const turning = before.way !== after.way && passMps[i]! < TURN_MPS;
  const delay = tags === undefined ? undefined : nodeDelay(tags, before.forward);
  if (delay) passMps[i] = Math.min(passMps[i]!, delay.passKmh / 3.6);
  return Math.max(turning ? TURN_WAIT_S : 0, delay?.waitS ?? 0);
}

function closingNotes(drive: Drive, unmappedM: number): string[] {
  const km = (m: number) => `${(m / 1000).toFixed(1)} km`;
  const offMapM = drive.legs.reduce((sum, leg) => sum + (leg.kind === 'offMap' ? leg.toM - leg.fromM : 0), 0);
  const gaps = drive.legs.filter((leg) => leg.kind === 'gap').length;
  const notes: string[] = [];
  if (unmappedM > 0)
    notes.push(`No speed limit is mapped on ${km(unmappedM)}: the country’s general limits are used there.`);
  if (offMapM > 0)
    notes.push(`${km(offMapM)} lie off the mapped roads: ${OFF_MAP_KMH} km/h is assumed there.`);
  if (gaps > 0)
    notes.push(
      `The route breaks ${gaps === 1 ? 'once' : `${gaps} times`}: no time is counted for what lies between.`,
    );
  notes.push('Times assume clear roads, no queues and no breaks.');
  return notes;
}
