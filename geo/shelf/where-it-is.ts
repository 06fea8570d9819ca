import { bearingDeg, distanceM, type Place } from '../earth/sphere.ts';
import { printRun, printShortMiles } from '../units/print.ts';
import { clip } from '../units/text.ts';
import { foldName, type NameEntry } from './names.ts';

/** Named places that people live in, the largest first. */
const SETTLEMENTS = ['city', 'town', 'village', 'suburb', 'hamlet'];
/** A place this far off is not where something is. */
const NEAR_M = 15_000;

/** How large a settlement is: 0 the largest; undefined for what is none. */
export function settlementRank(what: string): number | undefined {
  const rank = SETTLEMENTS.indexOf(what);
  return rank < 0 ? undefined : rank;
}

/** A named place that others can be told by: a settlement, or a station. */
export interface Landmark extends Place {
  readonly name: string;
  /** town, village, station, … as it is mapped */
  readonly what: string;
}

/** What a tagged node is to others, if it has a name and is one to be told by. */
export function landmarkOf(
  { name, place, railway }: Readonly<Record<string, string | undefined>>,
  at: Place,
): Landmark | undefined {
  const what = place ?? (railway === 'station' || railway === 'halt' ? railway : undefined);
  return name === undefined || what === undefined ? undefined : { name, what, ...at };
}

/**
 * Where a named thing lies, by the nearest settlement, or station where there is none: “1.2 km (0.7 mi) north of
 * Oakham”. A settlement is told by a town, or another that is larger than itself. @returns undefined where none is near
 */
export function whereItIs(of: NameEntry, landmarks: Iterable<Landmark>): string | undefined {
  const nearest: { settlement?: Away; station?: Away } = {};
  for (const at of landmarks) {
    const as = settlementRank(at.what) === undefined ? 'station' : 'settlement';
    const awayM = distanceM(of.lat, of.lon, at.lat, at.lon);
    if (awayM < (nearest[as]?.awayM ?? NEAR_M) && canTell(of, at)) nearest[as] = { at, awayM };
  }
  const { settlement, station } = nearest;
  if (settlement) return sayFrom(of, settlement.at, clip(settlement.at.name, 40));
  return station && sayFrom(of, station.at, `${clip(station.at.name, 40)} station`);
}

interface Away {
  readonly at: Landmark;
  readonly awayM: number;
}

/** Tells apart what has the same name and is the same: what lies near nothing by the first of its name. */
export function toldApart<N extends NameEntry & { readonly where?: string }>(entries: readonly N[]): N[] {
  return entries.map((entry) => {
    const first = entries.find(({ name, what }) => name === entry.name && what === entry.what);
    if (entry.where !== undefined || first === undefined || first === entry) return entry;
    return { ...entry, where: sayFrom(entry, first, 'the first of this name') };
  });
}

function sayFrom(of: Place, from: Place, name: string): string {
  const awayM = distanceM(of.lat, of.lon, from.lat, from.lon);
  const way = WAYS[Math.round(bearingDeg(from.lat, from.lon, of.lat, of.lon) / 45) % WAYS.length];
  return `${printRun(awayM)} (${printShortMiles(awayM)}) ${way} of ${name}`;
}

const WAYS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];

function canTell(of: NameEntry, { name, what }: Landmark): boolean {
  const rank = settlementRank(what);
  const isStation = what === 'station' || what === 'halt';
  if (rank === undefined && !isStation) return false;
  if (of.kind === 'road') return true;
  if (of.kind === 'site') return rank !== undefined || foldName(name) !== foldName(of.name);
  const least = Math.max(2, settlementRank(of.what) ?? SETTLEMENTS.length);
  return rank !== undefined && rank < least && foldName(name) !== foldName(of.name);
}
