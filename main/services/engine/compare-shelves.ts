import { checkDrive } from '../../../geo/check.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import { readLeaving } from '../../../geo/drive/times/leaving.ts';
import { given } from '../../../geo/given.ts';
import { compareReports } from '../../../geo/library/differences/compare-reports.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import { ok, type Result } from '../../../geo/result.ts';
import type { MapChanges } from '../../contract/map-changes.ts';
import { PROGRAM } from '../../version.ts';
import type { OpenShelf } from '../shelf/open-shelf.ts';
import { type Pause, roadsFromShelf } from '../shelf/roads-from-shelf.ts';
import type { ToCompare } from './protocol.ts';
import { readOneRoute } from './read-drive-file.ts';

interface Shelves {
  readonly was: OpenShelf;
  readonly now: OpenShelf;
}

/** Checks each drive on the shelf as it was and as it is now. Drives that neither holds anything of are left out. */
export async function compareShelves(shelves: Shelves, asked: ToCompare, pause: Pause): Promise<MapChanges> {
  const drives: MapChanges['drives'] = [];
  for (const file of asked.drives) {
    const compared = await compareDrive(shelves, file, { asked, pause });
    if (!compared.ok)
      drives.push({ name: file.name, say: compared.error.message, compared: false, differences: [] });
    else if (compared.value !== undefined) drives.push(compared.value);
  }
  return { drives };
}

async function compareDrive(
  { was, now }: Shelves,
  file: ToCompare['drives'][number],
  { asked, pause }: { readonly asked: ToCompare; readonly pause: Pause },
): Promise<Result<MapChanges['drives'][number] | undefined>> {
  const read = await readOneRoute(file);
  if (!read.ok) return read;
  const older = await checkOn(was, read.value, { file, asked, pause });
  const newer = await checkOn(now, read.value, { file, asked, pause });
  // what lay on nothing before has no past to be compared with
  if (older === undefined || newer === undefined) return ok(undefined);
  if (!older.ok) return older;
  if (!newer.ok) return newer;
  const compared = compareReports({ was: older.value, now: newer.value, units: asked.units });
  if (!compared.ok) return compared;
  const { say, differences } = compared.value;
  return ok({
    name: read.value.name || file.name,
    say,
    compared: true,
    differences: differences.map((each) => ({
      kind: each.kind,
      ...given({ level: each.now?.level }),
      fromM: each.fromM,
      say: each.say,
    })),
  });
}

async function checkOn(
  shelf: OpenShelf,
  route: Route,
  { file, asked, pause }: { file: ToCompare['drives'][number]; asked: ToCompare; pause: Pause },
): Promise<Result<DriveReport> | undefined> {
  const { roads, used } = await roadsFromShelf(shelf, route, pause);
  if (used.length === 0) return undefined;
  await pause();
  const drive = followRoads(route, roads);
  const { vehicle, margins, country, made, localNotes } = asked;
  const leaving = file.leaveAt === undefined ? undefined : readLeaving(file.leaveAt, drive, roads, country);
  if (leaving?.ok === false) return leaving;
  return ok(
    checkDrive({
      route,
      file: file.name,
      drive,
      roads,
      card: vehicle,
      ...given({ country, margins, localNotes, leaving: leaving?.value }),
      program: PROGRAM,
      made,
    }),
  );
}
