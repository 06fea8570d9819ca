import type { Drive } from '../drive/drive.ts';
import type { RouteSegment } from '../drive/gpx/route.ts';
import { cumulativeM } from '../drive/gpx/route-length.ts';
import { pointAt } from '../drive/point-at.ts';
import { distanceM } from '../earth/sphere.ts';
import { lastOrZero } from '../lists.ts';
import type { Roads } from '../roads/roads.ts';

/** A drive as its file draws it, with the heights that stand there. */
export type FileLine = readonly Pick<RouteSegment, 'lat' | 'lon' | 'elevationM'>[];

/** Heights are taken at steps of this length, the median of what stands this far to either side. Metres. */
const STEP_M = 50;
const BESIDE_M = 150;
/** Fewer heights than these have no median that a single wrong one would not move. */
const LEAST_HEIGHTS = 3;
/**
 * A slope is measured over this length: a receiver's height is good to some 5 m and drifts slowly, which over 400 m is a
 * slope of one or two per cent. Judgement, no source. Metres.
 */
export const SLOPE_OVER_M = 400;
/** Of the steps so many must have heights near them. */
const COVERED_SHARE = 0.8;
/** How far the file's metres and those along the roads may be apart: a share of the drive, and metres. */
const APART_SHARE = 0.1;
const APART_M = 2000;

interface Profile {
  /** metres along the file's line, and the height there */
  readonly atM: readonly number[];
  readonly heightM: readonly number[];
  readonly lat: readonly number[];
  readonly lon: readonly number[];
  readonly lengthM: number;
}

/**
 * The steepest slope on a part of a drive by the heights in its file, smoothed, per cent.
 * @param fromM metres along the drive, and so `toM`
 * @returns undefined where too few heights stand there
 */
export function steepestByFile(
  line: FileLine,
  { drive, roads }: { readonly drive: Drive; readonly roads: Roads },
  fromM: number,
  toM: number,
): number | undefined {
  const profile = profileOf(line);
  if (profile.atM.length === 0) return undefined;
  const [from, to] = [fromM, toM].map((m) => alongFile(profile, drive, roads, m));
  if (from === undefined || to === undefined || to - from < SLOPE_OVER_M) return undefined;
  const heights = smoothed(profile, from, to);
  const known = heights.filter((each) => each !== undefined).length;
  if (known < COVERED_SHARE * heights.length) return undefined;
  const over = SLOPE_OVER_M / STEP_M;
  let steepest: number | undefined;
  for (let i = 0; i + over < heights.length; i++) {
    const [low, high] = [heights[i], heights[i + over]];
    if (low === undefined || high === undefined) continue;
    steepest = Math.max(steepest ?? 0, (100 * Math.abs(high - low)) / SLOPE_OVER_M);
  }
  return steepest;
}

/** Every position with a height. */
function profileOf(line: FileLine): Profile {
  const profile = { atM: [] as number[], heightM: [] as number[], lat: [] as number[], lon: [] as number[] };
  let beforeM = 0;
  for (const segment of line) {
    const along = cumulativeM(segment);
    for (let i = 0; i < along.length; i++) {
      const height = segment.elevationM?.[i] ?? Number.NaN;
      if (Number.isNaN(height)) continue;
      profile.atM.push(beforeM + along[i]!);
      profile.heightM.push(height);
      profile.lat.push(segment.lat[i]!);
      profile.lon.push(segment.lon[i]!);
    }
    beforeM += lastOrZero(along);
  }
  return { ...profile, lengthM: beforeM };
}

/** Where a place of the drive lies along the file's line: the nearest position about there. */
function alongFile(profile: Profile, drive: Drive, roads: Roads, m: number): number | undefined {
  const place = pointAt(drive, roads, m);
  if (place === undefined) return undefined;
  const about = (m / drive.lengthM) * profile.lengthM;
  const reach = Math.max(APART_M, APART_SHARE * profile.lengthM);
  let [found, least]: [number | undefined, number] = [undefined, Number.POSITIVE_INFINITY];
  for (const [i, atM] of profile.atM.entries()) {
    if (Math.abs(atM - about) > reach) continue;
    const away = distanceM(place.lat, place.lon, profile.lat[i]!, profile.lon[i]!);
    if (away < least) [found, least] = [atM, away];
  }
  return found;
}

/** Heights at every step between two places of the file's line; undefined where too few stand near. */
function smoothed({ atM, heightM }: Profile, fromM: number, toM: number): (number | undefined)[] {
  const heights: (number | undefined)[] = [];
  let first = 0;
  for (let m = fromM; m <= toM; m += STEP_M) {
    while (first < atM.length && atM[first]! < m - BESIDE_M) first++;
    const near: number[] = [];
    for (let i = first; i < atM.length && atM[i]! <= m + BESIDE_M; i++) near.push(heightM[i]!);
    near.sort((a, b) => a - b);
    heights.push(near.length < LEAST_HEIGHTS ? undefined : near[near.length >> 1]);
  }
  return heights;
}
