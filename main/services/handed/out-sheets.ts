import { keptDay } from '../../../geo/day/kept-day.ts';
import { given } from '../../../geo/given.ts';
import { isDeleted } from '../../../geo/library/bin.ts';
import type { DriveBody } from '../../../geo/library/body/drive.ts';
import type { LoadList } from '../../../geo/load/list/load-list.ts';
import { type DriveReport, driveReportSchema } from '../../../geo/report/report.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import type { Units } from '../../../geo/units/in-units.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { changedSince } from '../../../geo/yard/handed/changed-since.ts';
import { newOrWorse } from '../../../geo/yard/handed/new-or-worse.ts';
import { type Leaves, leaves, type OutSheet, outNow } from '../../../geo/yard/handed/out-now.ts';
import { overlapping, sayOverlap } from '../../../geo/yard/handed/overlaps.ts';
import type { Since } from '../../../geo/yard/handed/say-since.ts';
import { gravestOutFirst, type Standing, standingOf } from '../../../geo/yard/handed/standing.ts';
import { PROGRAM } from '../../version.ts';
import { type CheckHooks, type CheckRequest, checkFromFiles } from '../check-drive.ts';
import { sha256Of } from '../files/sha256.ts';
import type { Library } from '../library/library.ts';
import { notesOf } from '../library/local-notes.ts';
import { localDay, localMinute } from '../local-day.ts';
import { partsOnShelf } from '../shelf/parts-on-shelf.ts';
import { shelfFolder } from '../shelf/where-shelf.ts';
import { backDays } from './back.ts';
import { handedSheets } from './handed-sheets.ts';
import { loadOf } from './known-of.ts';

interface OutOf {
  readonly library: Library;
  readonly dataFolder: string;
  now(): Date;
}

/** A sheet that is out, and what of it has changed since. */
export interface OutRow {
  readonly sheet: OutSheet;
  readonly leaves: Leaves;
  /** empty where a check would say the same today */
  readonly since: readonly Since[];
  readonly standing: Standing;
  readonly verdict: OutSheet['body']['verdict'];
  /** what its drive is called now, where that is another name */
  readonly driveNow: string | undefined;
  /** that its vehicle is out elsewhere at the same hours, a sentence; '' where it is not */
  readonly overlap: string;
}

/**
 * The sheets that are out and those whose vehicle is back: barred ones first, then those due and not back, then by the
 * coming leave days. Nothing is checked again for it.
 */
export async function outSheets({ library, dataFolder, now }: OutOf): Promise<OutRow[]> {
  const out = outNow(handedSheets(library), localDay(now()));
  if (out.length === 0) return [];
  const [maps, notes] = [await partsOnShelf(shelfFolder(dataFolder)), notesOf(library)];
  const moment = now().toISOString();
  const back = backDays(library);
  const still = out.filter(({ body }) => !back.has(body.number));
  const rows = out.map((sheet) => ({
    sheet,
    leaves: leaves(sheet.body, localDay(now())),
    ...nowOf(sheet, { library, back, still, minute: localMinute(now()) }),
    since: changedSince(
      sheet.body,
      {
        ...nowAboard(library, sheet),
        gone: goneOf(library, sheet),
        day: dayKeptSince(library, sheet),
        notes,
        maps,
        program: PROGRAM,
        moment,
      },
      sha256Of,
    ),
  }));
  return gravestOutFirst(rows);
}

function nowOf(
  sheet: OutSheet,
  {
    library,
    back,
    still,
    minute,
  }: {
    readonly library: Library;
    readonly back: ReadonlyMap<string, string>;
    readonly still: readonly OutSheet[];
    readonly minute: string;
  },
): Pick<OutRow, 'standing' | 'verdict' | 'driveNow' | 'overlap'> {
  const { body } = sheet;
  const standing = standingOf(body, back.get(body.number), minute);
  const name =
    body.drive === undefined ? undefined : library.find('drive', body.drive)?.versions[0]?.body.name;
  const others = standing.kind === 'back' ? [] : still.filter((each) => each.body.number !== body.number);
  return {
    standing,
    verdict: body.verdict,
    driveNow: name === body.driveName ? undefined : name,
    overlap: sayOverlap(body, overlapping(body, others)),
  };
}

/** The vehicle's card as it is now, and what is aboard; undefined where the library has none. */
function nowAboard(
  library: Library,
  { body }: OutSheet,
): { readonly card: VehicleCard | undefined; readonly load: LoadList['items'] | undefined } {
  const item = body.vehicle === undefined ? undefined : library.find('vehicle', body.vehicle);
  const kept = item?.versions[0]?.body;
  return { card: kept?.card, load: kept && loadOf(library, kept.vehicleId) };
}

/** The day that is kept with the sheet's drive, where that was changed after the sheet was made. */
function dayKeptSince(
  library: Library,
  { body, made }: OutSheet,
): Pick<DriveBody, 'leaveAt' | 'plan'> | undefined {
  const item = body.drive === undefined ? undefined : library.find('drive', body.drive);
  const version = item?.versions[0];
  return version !== undefined && version.made > made ? version.body : undefined;
}

function goneOf(
  library: Library,
  { body }: OutSheet,
): { readonly vehicle: boolean; readonly drive: boolean } {
  const isGone = (kind: 'vehicle' | 'drive', id: string | undefined) => {
    const item = id === undefined ? undefined : library.find(kind, id);
    return item !== undefined && isDeleted(item);
  };
  return { vehicle: isGone('vehicle', body.vehicle), drive: isGone('drive', body.drive) };
}

/** A sheet's drive to be checked again, and the report that was handed out: plain data that a thread can be handed. */
export interface SheetAgain {
  readonly request: CheckRequest;
  readonly was: DriveReport;
  readonly units: Units;
}

/** On the shelf's maps, with the vehicle, load and notes of today, at the sheet's own leave time. */
export async function sheetAgain(
  sheet: OutSheet,
  { library, dataFolder }: OutOf,
  units: Units,
): Promise<Result<SheetAgain>> {
  const was = await reportOf(library, sheet);
  if (!was.ok) return was;
  const request: CheckRequest = {
    ...driveOf(library, sheet),
    routeName: was.value.route.file,
    mapPaths: [],
    shelf: shelfFolder(dataFolder),
    card: nowAboard(library, sheet).card ?? was.value.vehicle,
    ...askedWith(library, sheet),
    yard: { dataFolder, folder: library.folder },
  };
  return ok({ request, was: was.value, units });
}

/** @returns what is new or worse than it was handed out, a sentence each */
export async function worseNow(
  { request, was, units }: SheetAgain,
  hooks: CheckHooks,
): Promise<Result<readonly string[]>> {
  const checked = await checkFromFiles(request, hooks);
  return checked.ok ? newOrWorse(was, checked.value.report, units) : checked;
}

async function reportOf(library: Library, { body }: OutSheet): Promise<Result<DriveReport>> {
  const sha256 = body.report ?? '';
  const bytes = await library.readBytes('handed', sha256);
  if (!bytes.ok) return bytes;
  const read = driveReportSchema.safeParse(JSON.parse(new TextDecoder().decode(bytes.value)));
  if (read.success) return ok(read.data);
  return fail(
    'handed.newer',
    `The report of sheet ${body.number} was made by another version of the program and cannot be compared. Hand the drive over anew.`,
  );
}

/** The file it was made from, where the library has it; else the track that was handed over, which is the same drive. */
function driveOf(
  library: Library,
  { body }: OutSheet,
): Pick<CheckRequest, 'routePath' | 'routeSha256' | 'track'> {
  const item = body.drive === undefined ? undefined : library.find('drive', body.drive);
  if (item && !isDeleted(item) && body.track !== undefined)
    return { routePath: library.pathOf('gpx', body.gpx), routeSha256: body.gpx, track: body.track };
  const own = body.files.find(({ name }) => name === 'drive.gpx');
  return {
    routePath: library.pathOf('handed', own?.sha256 ?? ''),
    ...given({ routeSha256: own?.sha256 }),
    track: 1,
  };
}

function askedWith(library: Library, sheet: OutSheet): Partial<CheckRequest> {
  const { leaveAt, country, margins, plan, items, loadKept } = sheet.body;
  const load = loadKept === true ? nowAboard(library, sheet).load : items;
  return given({ leaveAt, country, margins, load, day: plan && keptDay(plan).day });
}
