import { distanceIn, type Units } from '../../units/in-units.ts';
import { OFF_MAP_KMH } from './say-time-note.ts';

/**
 * More of a drive off the map than this leaves its times open: at 20 km/h such parts make up most of the time, and may be
 * main roads that the map lacks. 10 km are half an hour at that speed, and a quarter of it on a main road. Common
 * practice, no source.
 */
const MOST_SHARE = 0.2;
const MOST_M = 10_000;
/** Less, a farm track or a car park, is told with the notes alone. */
const TOLD_M = 1_000;

/** As much of a report as tells how much of its drive the map lacks. */
export interface OffMapOf {
  readonly match: { readonly offMapM: number };
  readonly route: { readonly lengthM: number };
}

/** Whether enough of a drive is on mapped roads to tell when its end is reached. */
export function isTimed({ match: { offMapM }, route: { lengthM } }: OffMapOf): boolean {
  return offMapM <= MOST_M && offMapM <= MOST_SHARE * lengthM;
}

/** Why no time is told of a drive, to follow "time unknown"; undefined where one is. */
export function sayUntimed(of: OffMapOf, units: Units): string | undefined {
  return isTimed(of) ? undefined : `${distanceIn(units, of.match.offMapM)} of it is off the map`;
}

/** What a time that is told makes of the parts off the map; undefined where they are short, or no time is told. */
export function sayOffMapTime(of: OffMapOf, units: Units): string | undefined {
  const { offMapM } = of.match;
  if (!isTimed(of) || offMapM < TOLD_M) return undefined;
  return `with ${distanceIn(units, offMapM)} off the map taken at ${OFF_MAP_KMH} km/h`;
}
