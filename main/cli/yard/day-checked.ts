import type { Item } from '../../../geo/library/item.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { checkFromFiles } from '../../services/check-drive.ts';
import { pairOfLibrary } from '../../services/hand-over/pair-of-library.ts';
import { findItem, refuseTwoVersions } from '../../services/library/find-item.ts';
import type { Library } from '../../services/library/library.ts';
import { openSettings } from '../../services/settings/settings-store.ts';
import { shelfFolder } from '../../services/shelf/where-shelf.ts';
import type { Terminal } from '../terminal.ts';

/** The day of a drive as one vehicle meets it. */
export interface DayChecked extends Pick<DriveReport, 'verdict' | 'vehicle'> {
  readonly day: NonNullable<DriveReport['day']>;
  /** the leave time is over */
  readonly past: boolean;
}

/** Checks a drive of the library with a vehicle of it, at the kept leave time and with the kept day. */
export async function dayChecked(
  {
    library,
    drive,
    vehicle,
  }: { readonly library: Library; readonly drive: Item<'drive'>; readonly vehicle: string },
  { dataFolder, now, progress, signal }: Terminal,
): Promise<Result<DayChecked>> {
  const found = findItem(library, 'vehicle', vehicle);
  if (!found.ok) return found;
  const single = refuseTwoVersions(found.value);
  if (!single.ok) return single;
  const { id, versions } = found.value;
  const [body, taken] = [drive.versions[0]?.body, versions[0]?.body];
  if (body === undefined || taken === undefined)
    return fail(
      'library.none',
      "The drive or the vehicle has been removed. See 'lanegauge yard list' for what there is.",
    );
  const { margins, country } = (await openSettings(dataFolder, now)).current();
  const checked = await checkFromFiles(
    {
      ...pairOfLibrary(library, body, { id, versions, vehicleId: taken.vehicleId, card: taken.card }),
      mapPaths: [],
      shelf: shelfFolder(dataFolder),
      margins,
      yard: { dataFolder, folder: library.folder },
      ...(country === null ? {} : { country }),
    },
    { now, signal, onProgress: (what, share) => progress.show(what, share) },
  );
  progress.clear();
  if (!checked.ok) return checked;
  const { day, verdict, vehicle: card, timetable } = checked.value.report;
  if (day === undefined)
    return fail(
      'day.none',
      'No day is kept with that drive yet. Give it stops with --stop, or a return hour with --home-by.',
    );
  return ok({ day, verdict, vehicle: card, past: timetable?.past === true });
}
