import { writeGpx } from '../../../geo/drive/gpx/write-gpx.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import { ok, type Result } from '../../../geo/result.ts';
import type { PlanOnAnyMap } from '../../services/way-round/plan-read.ts';
import { type MapNamed, planFromFiles } from '../../services/way-round/ways-from-files.ts';
import { PROGRAM } from '../../version.ts';

/** A plan to lay out: everything in it can be handed to a thread. */
export interface PlanWork {
  readonly map: MapNamed;
  readonly plan: PlanOnAnyMap;
}

export interface PlanDone {
  readonly report: DriveReport;
  /** the drive as a file */
  readonly gpx: string;
}

/** Lays out a drive and writes it down. */
export async function makePlan({ map, plan }: PlanWork): Promise<Result<PlanDone>> {
  const planned = await planFromFiles(map, plan);
  if (!planned.ok) return planned;
  const { report, route } = planned.value;
  const gpx = writeGpx(route, [], PROGRAM);
  return gpx.ok ? ok({ report, gpx: gpx.value }) : gpx;
}
