import { basename } from 'node:path';
import { type CheckInput, checkDrive } from '../../../../geo/check.ts';
import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import { refuseEndless } from '../../../../geo/drive/refuse-endless.ts';
import { type Leaving, readLeaving } from '../../../../geo/drive/times/leaving.ts';
import { given } from '../../../../geo/given.ts';
import { fail, ok, type Result } from '../../../../geo/result.ts';
import { type Box, boxOfDiscs } from '../../../../geo/roads/box.ts';
import { discsAlong } from '../../../../geo/roads/discs.ts';
import { cellOf } from '../../../../geo/yard/cell.ts';
import { mapKey } from '../../../../geo/yard/map-key.ts';
import { PROGRAM } from '../../../version.ts';
import { readDriveFile } from '../../engine/read-drive-file.ts';
import { chooseTrack } from '../../route/choose-track.ts';
import type { OpenShelf } from '../../shelf/open-shelf.ts';
import { roadsFromShelf } from '../../shelf/roads-from-shelf.ts';
import { compareAndKeep } from './compare-and-keep.ts';
import type { DriveTask, JudgedCell, JudgeSetup } from './messages.ts';

/** The fingerprint of a map of which something could not be read: equal to none, so that its cells are stale. */
const DAMAGED = 'damaged';

/**
 * Reads a drive and the shelf about it, follows it once and holds it against each vehicle: what a check of either with
 * the same notes, margins and leave time says.
 * @param onCell hears of each cell as it is done
 * @returns where the drive lies, with what is read about it; or why it has no cell
 */
export async function judgeDrive(
  shelf: OpenShelf,
  task: DriveTask,
  setup: JudgeSetup,
  onCell: (cell: JudgedCell) => void,
): Promise<Result<Box>> {
  const read = await readDriveFile(task.file);
  if (!read.ok) return read;
  const chosen = chooseTrack(read.value, task.track);
  if (!chosen.ok) return chosen;
  const { route, note } = chosen.value;
  const box = boxOfDiscs(discsAlong(route));
  if (box === undefined)
    return fail(
      'drive.empty',
      'The drive has no two positions in a row. Save the whole drive, and add it again.',
    );
  const { roads, damaged } = await roadsFromShelf(shelf, route, async () => {});
  const drive = followRoads(route, roads);
  const endless = refuseEndless(drive);
  if (endless !== undefined) return { ok: false, error: endless };
  const leaving: Result<Leaving | undefined> =
    task.leaveAt === undefined ? ok(undefined) : readLeaving(task.leaveAt, drive, roads, setup.country);
  if (!leaving.ok) return leaving;
  // once such a map is mended its parts are what they were, and the cell is no longer what a check says
  const isWhole = damaged.every((name) => shelf.damaged.includes(name));
  const parts = shelf.parts.map(({ part }) => part.meta);
  const map = isWhole ? mapKey(parts, box) : DAMAGED;
  const input: Omit<CheckInput, 'card'> = {
    route,
    file: basename(task.file.name),
    drive,
    roads,
    ...given({ margins: setup.margins, country: setup.country, leaving: leaving.value, day: task.day }),
    localNotes: setup.notes,
    notes: [...(note === undefined ? [] : [note]), ...read.value.notes],
    program: PROGRAM,
    made: setup.made,
  };
  for (const { id, card, keptAt } of task.vehicles) {
    const report = checkDrive({ ...input, card });
    const kept = keptAt && (await compareAndKeep(keptAt, report, setup));
    onCell({ drive: task.drive, vehicle: id, cell: cellOf(report), map, ...kept });
  }
  return ok(box);
}
