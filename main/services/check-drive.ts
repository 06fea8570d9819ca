import { basename } from 'node:path';
import { checkDrive } from '../../geo/check.ts';
import type { DayPlan } from '../../geo/day/plan.ts';
import type { Drive } from '../../geo/drive/drive.ts';
import { chooseRoute } from '../../geo/drive/gpx/choose-route.ts';
import type { Route } from '../../geo/drive/gpx/route.ts';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import { refuseEndless } from '../../geo/drive/refuse-endless.ts';
import { type Leaving, readLeaving } from '../../geo/drive/times/leaving.ts';
import { given } from '../../geo/given.ts';
import type { LoadList } from '../../geo/load/list/load-list.ts';
import { loadResult } from '../../geo/load/load-result.ts';
import type { DriveReport } from '../../geo/report/report.ts';
import { fail, ok, type Result } from '../../geo/result.ts';
import type { Roads } from '../../geo/roads/roads.ts';
import type { Margins } from '../../geo/rules/rule.ts';
import type { Units } from '../../geo/units/in-units.ts';
import { quote } from '../../geo/units/text.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import { PROGRAM } from '../version.ts';
import { type NotesRead, readYardNotes, type YardNamed } from './library/local-notes.ts';
import { openMap } from './map/open-map.ts';
import { chooseTrack } from './route/choose-track.ts';
import { liesSwapped } from './route/lies-swapped.ts';
import { readRouteFile } from './route/read-route-file.ts';
import { roadsOnShelf } from './shelf/roads-on-shelf.ts';
import { readLoadFile } from './vehicle/read-load-file.ts';
import { readVehicleFile } from './vehicle/read-vehicle-file.ts';
import { waysFromFiles } from './way-round/ways-from-files.ts';
import type { CheckOnAnyMap, WaysWanted } from './way-round/ways-past.ts';

export interface CheckRequest {
  readonly routePath: string;
  /** SHA-256 of that file, where it was kept: another is refused */
  readonly routeSha256?: string;
  /** none: the shelf is used */
  readonly mapPaths: readonly string[];
  /** where the shelf lies */
  readonly shelf: string;
  /** what the user calls the drive's file; as it is named where it lies, where left out */
  readonly routeName?: string;
  readonly vehiclePath?: string;
  /** the card itself, in place of its file */
  readonly card?: VehicleCard;
  readonly loadPath?: string;
  /** the load's items, in place of its file */
  readonly load?: LoadList['items'];
  /** name or 1-based number as typed; a number is the 1-based place in the file, whatever the tracks are called */
  readonly track?: string | number;
  /** ISO 3166-1 alpha-2: what the place cannot tell */
  readonly country?: string;
  /** local wall time, YYYY-MM-DDTHH:MM */
  readonly leaveAt?: string;
  readonly margins?: Margins;
  /** what the sentences are in; metric where left out */
  readonly units?: Units;
  /** stops with their stay, and the return hour */
  readonly day?: DayPlan;
  /** what was kept with the drive or the vehicle and cannot be counted in: a sentence each */
  readonly uncounted?: readonly string[];
  /** whose local notes are used; none where left out */
  readonly yard?: YardNamed;
  /** ways past what is barred are looked for too, and past what is named */
  readonly wayRound?: WaysWanted;
}

export interface CheckHooks {
  /** what is being done, and how far it is (0…1) where that is known */
  onProgress?(what: string, share?: number): void;
  readonly signal?: AbortSignal;
  now(): Date;
}

export interface CheckOutcome {
  readonly report: DriveReport;
  readonly route: Route;
  readonly drive: Drive;
  readonly roads: Roads;
  /** 1-based place of the drive in its file */
  readonly track: number;
  /** the load's items, where one was given */
  readonly items?: LoadList['items'];
  /** everything of the check but its map */
  readonly check: CheckOnAnyMap;
}

/** The whole check from files: card, route and map read, the drive followed, every subject asked. */
export async function checkFromFiles(
  request: CheckRequest,
  hooks: CheckHooks,
): Promise<Result<CheckOutcome>> {
  // the small files first: a misspelt card should not cost a map's reading time
  const card = await cardFrom(request);
  if (!card.ok) return card;
  const items = await itemsFrom(request);
  if (items?.ok === false) return items;
  const load = items && loadResult(card.value, items.value);
  if (load?.ok === false) return load;
  const file = await readRouteFile(request.routePath, request.routeSha256);
  if (!file.ok) return file;
  const chosen =
    typeof request.track === 'number'
      ? chooseTrack(file.value, request.track)
      : chooseRoute(file.value, request.track);
  if (!chosen.ok) return chosen;
  const { route, note } = chosen.value;

  const noted = await notesFor(request, hooks);
  if (!noted.ok) return noted;
  const map = await mapAbout(route, request, hooks);
  if (!map.ok) return map;
  if (hooks.signal?.aborted) return fail('cancelled', 'Cancelled.');
  hooks.onProgress?.('following the drive');
  const drive = followRoads(route, map.value);
  const endless = refuseEndless(drive);
  if (endless !== undefined) return { ok: false, error: endless };
  const isSwapped = await liesSwapped({ route, drive }, async (about) => {
    const there = await mapAbout(about, request, hooks);
    return there.ok ? there.value : undefined;
  });
  const leaving = leavingOf(request, drive, map.value);
  if (leaving?.ok === false) return leaving;
  hooks.onProgress?.('checking');
  const check = {
    route,
    file: request.routeName ?? basename(request.routePath),
    card: card.value,
    ...given({
      load: load?.value,
      country: request.country,
      margins: request.margins,
      day: request.day,
      units: request.units,
    }),
    localNotes: noted.value.localNotes,
    notes: [
      ...(note === undefined ? [] : [note]),
      ...(request.uncounted ?? []),
      ...file.value.notes,
      ...noted.value.say,
    ],
    ...(isSwapped && { swapped: true }),
    program: PROGRAM,
    made: hooks.now().toISOString(),
  };
  const report = checkDrive({ ...check, drive, roads: map.value, ...given({ leaving: leaving?.value }) });
  const onAnyMap = { ...check, ...given({ leaveAt: request.leaveAt }) };
  const whole = await withWaysRound(report, onAnyMap, request, hooks);
  if (!whole.ok) return whole;
  const track = file.value.routes.indexOf(route) + 1;
  return ok({
    report: whole.value,
    route,
    drive,
    roads: map.value,
    check: onAnyMap,
    track,
    ...given({ items: items?.value }),
  });
}

/** The report with the ways round that were asked for. */
async function withWaysRound(
  report: DriveReport,
  check: CheckOnAnyMap,
  { wayRound, ...request }: CheckRequest,
  hooks: CheckHooks,
): Promise<Result<DriveReport>> {
  if (wayRound === undefined) return ok(report);
  const unknown = wayRound.past?.find((id) => report.findings.every((finding) => finding.id !== id));
  if (unknown !== undefined)
    return fail(
      'way-round.unknown',
      `There is no finding ${quote(unknown, 100)} on this drive to go past. Take an id of the report's findings.`,
    );
  hooks.onProgress?.('looking for ways round');
  const found = await waysFromFiles(request, check, wayRound, hooks.signal);
  if (!found.ok) return found;
  const { waysRound, noWayRound } = found.value;
  return ok({ ...report, waysRound: [...waysRound], noWayRound: [...noWayRound] });
}

function mapAbout(
  route: Route,
  { mapPaths, shelf }: CheckRequest,
  hooks: CheckHooks,
): Promise<Result<Roads>> {
  if (mapPaths.length === 0) return roadsOnShelf(shelf, route, hooks.signal);
  return openMap(mapPaths, route, {
    ...given({ signal: hooks.signal }),
    onProgress: (share) => hooks.onProgress?.('reading the map', share),
  });
}

async function notesFor({ yard }: CheckRequest, { now }: CheckHooks): Promise<Result<NotesRead>> {
  return yard === undefined ? ok({ localNotes: [], say: [] }) : readYardNotes(yard, now);
}

async function cardFrom({ card, vehiclePath }: CheckRequest): Promise<Result<VehicleCard>> {
  if (card !== undefined) return ok(card);
  return vehiclePath === undefined
    ? fail('vehicle.none', 'No vehicle is named. Name one with --vehicle CARD.json.')
    : readVehicleFile(vehiclePath);
}

async function itemsFrom({ load, loadPath }: CheckRequest): Promise<Result<LoadList['items']> | undefined> {
  if (load !== undefined) return ok(load);
  if (loadPath === undefined) return undefined;
  const list = await readLoadFile(loadPath);
  return list.ok ? ok(list.value.items) : list;
}

function leavingOf(
  { leaveAt, country }: CheckRequest,
  drive: Drive,
  roads: Roads,
): Result<Leaving> | undefined {
  return leaveAt === undefined ? undefined : readLeaving(leaveAt, drive, roads, country);
}
