import { type CheckInput, checkDrive } from '../../../geo/check.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import { readLeaving } from '../../../geo/drive/times/leaving.ts';
import { given } from '../../../geo/given.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import { ok, type Result } from '../../../geo/result.ts';
import type { Reach } from '../../../geo/roads/discs.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { findWaysRound, type WaysRound } from '../../../geo/wayround/past-bar.ts';
import type { Prefer } from '../../../geo/wayround/price/prices.ts';

/** Which ways are wanted. */
export interface WaysWanted {
  /** tight or unknown findings to pass besides what is barred, by id */
  readonly past?: readonly string[];
  readonly prefer?: Prefer;
}

/** Everything of a check but the map and what is followed on it. */
export interface CheckOnAnyMap extends Omit<CheckInput, 'drive' | 'roads' | 'leaving'> {
  /** local wall time */
  readonly leaveAt?: string;
  /** the drive as it was followed on some roads: on these it is not followed again */
  readonly followed?: Pick<CheckInput, 'drive' | 'roads'>;
}

/** Reads the roads about a line: as far beside it as is asked. */
export type ReadRoads = (about: Pick<Route, 'segments'>, reach?: Reach) => Promise<Roads>;

/** A way round may lead this far beside the drive. */
export const WIDE_M = 10_000;

/** Ways past, and the check they belong to. */
export interface Found extends WaysRound {
  readonly report: DriveReport;
  readonly roads: Roads;
}

/** A check of a drive, followed on the roads that have been read. */
export function followedOn(roads: Roads, { leaveAt, followed, ...check }: CheckOnAnyMap): Result<CheckInput> {
  const drive =
    followed?.roads === roads
      ? followed.drive
      : followRoads(check.route, roads, given({ lookUp: check.lookUp }));
  const leaving = leaveAt === undefined ? undefined : readLeaving(leaveAt, drive, roads, check.country);
  if (leaving?.ok === false) return leaving;
  return ok({ ...check, drive, roads, ...given({ leaving: leaving?.value }) });
}

/** Ways past what stops a drive, where all the roads there are have been read. */
export function waysOn(roads: Roads, check: CheckOnAnyMap, wanted: WaysWanted): Result<Found> {
  const followed = followedOn(roads, check);
  if (!followed.ok) return followed;
  const report = checkDrive(followed.value);
  const { past, prefer } = wanted;
  const ways = findWaysRound({ check: followed.value, report, ...given({ askedIds: past, prefer }) });
  return ok({ ...ways, report, roads });
}

/**
 * The same where roads are read piece by piece: first those far about the drive, to find ways; then all that lies near
 * the ways found, buildings and trees included, so that each is judged on everything the map has.
 */
export async function waysRead(
  read: ReadRoads,
  check: CheckOnAnyMap,
  wanted: WaysWanted,
): Promise<Result<Found>> {
  const found = waysOn(await read(check.route, { reachM: WIDE_M }), check, wanted);
  if (!found.ok || found.value.waysRound.length === 0) return found;
  const ways = found.value.waysRound.map(({ path }) => segmentOf(path));
  const near = await read({ segments: [...check.route.segments, ...ways] });
  const judged = waysOn(near, check, wanted);
  if (!judged.ok) return judged;
  // the far roads tell better why there is no way than a map that ends beside the drive
  const noWayRound = judged.value.noWayRound.map(
    (none) => found.value.noWayRound.find(({ findingIds }) => sameIds(findingIds, none.findingIds)) ?? none,
  );
  return ok({ ...judged.value, noWayRound });
}

export function segmentOf(path: readonly (readonly [number, number])[]): Route['segments'][number] {
  return {
    lat: Float64Array.from(path, ([lat]) => lat),
    lon: Float64Array.from(path, ([, lon]) => lon),
    timeMs: new Float64Array(path.length).fill(Number.NaN),
  };
}

function sameIds(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((id, i) => id === b[i]);
}
