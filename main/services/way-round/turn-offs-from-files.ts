import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import { readLeaving } from '../../../geo/drive/times/leaving.ts';
import { given } from '../../../geo/given.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import { ok, type Result } from '../../../geo/result.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { lastTurnOffs, type TurnOff } from '../../../geo/wayround/turn-off.ts';
import { type MapNamed, onNamedMap } from './ways-from-files.ts';
import { type CheckOnAnyMap, WIDE_M } from './ways-past.ts';

type TurnOffs = ReadonlyMap<string, TurnOff | undefined>;

/**
 * The last places to turn off of a checked drive, by finding id: roads far beside the drive are read for it, since a way
 * off it may lead there.
 */
export async function turnOffsFromFiles(
  map: MapNamed,
  check: CheckOnAnyMap,
  report: DriveReport,
  signal?: AbortSignal,
): Promise<Result<TurnOffs>> {
  if (!isStopped(report)) return ok(new Map());
  return onNamedMap(map, signal, {
    whole: (roads) => turnOffsOn(roads, check, report),
    inPieces: async (read) => turnOffsOn(await read(check.route, WIDE_M), check, report),
  });
}

/** Whether something on the drive is worth turning off for. */
export function isStopped({ findings }: DriveReport): boolean {
  return findings.some(({ level, folded }) => (level === 'barred' || level === 'tight') && folded !== true);
}

/** The same where the roads far beside the drive have been read. */
export function turnOffsOn(
  roads: Roads,
  { leaveAt, ...check }: CheckOnAnyMap,
  report: DriveReport,
): Result<TurnOffs> {
  const drive = followRoads(check.route, roads, given({ lookUp: check.lookUp }));
  const leaving = leaveAt === undefined ? undefined : readLeaving(leaveAt, drive, roads, check.country);
  if (leaving?.ok === false) return leaving;
  const input = { ...check, drive, roads, ...given({ leaving: leaving?.value }) };
  return ok(lastTurnOffs({ check: input, report }));
}
