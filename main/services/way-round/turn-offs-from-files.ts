import { ontoRoads } from '../../../geo/drive/onto-roads.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import { ok, type Result } from '../../../geo/result.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { lastTurnOffs, type TurnOff } from '../../../geo/wayround/turn-off.ts';
import { type MapNamed, onNamedMap } from './ways-from-files.ts';
import { type CheckOnAnyMap, followedOn, WIDE_M } from './ways-past.ts';

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
    inPieces: async (read) => turnOffsOn(await read(check.route, { reachM: WIDE_M }), check, report),
  });
}

/** Whether something on the drive is worth turning off for. */
export function isStopped({ findings }: DriveReport): boolean {
  return findings.some(({ level, folded }) => (level === 'barred' || level === 'tight') && folded !== true);
}

/** The same where the roads far beside the drive have been read. */
export function turnOffsOn(roads: Roads, check: CheckOnAnyMap, report: DriveReport): Result<TurnOffs> {
  const { followed: known } = check;
  // what was followed on the roads near the drive is there among the far ones too
  const drive = known && known.roads !== roads ? ontoRoads(known.drive, known.roads, roads) : undefined;
  const followed = followedOn(roads, drive === undefined ? check : { ...check, followed: { drive, roads } });
  return followed.ok ? ok(lastTurnOffs({ check: followed.value, report })) : followed;
}
