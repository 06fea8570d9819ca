import { stat } from 'node:fs/promises';
import type { TileFeatures } from '../../../geo/basemap/features.ts';
import { prepareBaseMap } from '../../../geo/basemap/prepare.ts';
import { tileFeatures } from '../../../geo/basemap/tile-features.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import { refuseEndless } from '../../../geo/drive/refuse-endless.ts';
import type { Strip } from '../../../geo/drive/strip/strip.ts';
import { stripOf } from '../../../geo/drive/strip/strip-of.ts';
import { given } from '../../../geo/given.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import type { FollowedDrive } from '../../contract/followed-drive.ts';
import { GPX_MAX_BYTES } from '../../contract/limits.ts';
import type { MapSummary } from '../../contract/map-summary.ts';
import { readBytes } from '../files/read-bytes.ts';
import { sha256Of } from '../files/sha256.ts';
import { openMap } from '../map/open-map.ts';
import { chooseTrack } from '../route/choose-track.ts';
import { liesSwapped } from '../route/lies-swapped.ts';
import { roadsFromShelf } from '../shelf/roads-from-shelf.ts';
import { shelfTileCutter } from '../shelf/shelf-tiles.ts';
import { checkOpenDrive } from './check-open-drive.ts';
import { driveForPage, type OpenDrive } from './drive-for-page.ts';
import { handOverHandlers } from './hand-over.ts';
import { heldShelf } from './held-shelf.ts';
import { noteHandlers } from './notes.ts';
import { keepDrive } from './open-drives.ts';
import { openShelfFor } from './open-shelf-for.ts';
import type { EngineCallName, EngineCalls, EngineHandlers, NamedFile, WorkHooks } from './protocol.ts';
import { readAllRoutes, readDriveFile } from './read-drive-file.ts';
import { type EngineState, findDrive } from './state.ts';
import { sumUpMap } from './sum-up-map.ts';
import { createTiles } from './tiles.ts';
import { nameSources, underItsName } from './true-names.ts';
import { findPlaces } from './ways/find-named.ts';
import { wayRoundHandlers } from './ways/way-round.ts';

const CANCELLED = fail('cancelled', 'Cancelled.');
const NO_MAP = fail('no-map', 'No map is open. Open a map first.');

type RequestTo<K extends EngineCallName> = EngineCalls[K]['request'];

/** What the engine answers, with nothing open yet. */
export function createHandlers(): EngineHandlers {
  const state: EngineState = {
    map: undefined,
    mapFrom: undefined,
    mapInPart: false,
    tiles: undefined,
    cut: undefined,
    shelf: undefined,
    drives: new Map(),
  };
  return {
    openMap: (request, hooks) => openMapCall(state, request, hooks),
    openDrive: (request, hooks) => openDriveFile(state, request, hooks),
    check: async (request, { lookUp }) => checkOpenDrive(state, request, lookUp),
    tile: async (place) => tileAt(state, place),
    strip: async (request) => stripOfOpenDrive(state, request),
    ...handOverHandlers(state),
    ...heldShelf(),
    findPlaces: (request) => findPlaces(state, request),
    ...wayRoundHandlers(state),
    ...noteHandlers(state),
  };
}

async function openMapCall(
  state: EngineState,
  { file, shelf, about }: RequestTo<'openMap'>,
  hooks: WorkHooks,
): Promise<Result<MapSummary>> {
  const route = about === undefined ? ok(undefined) : await readAllRoutes(about);
  if (!route.ok) return route;
  return shelf === undefined
    ? openMapFile(state, { file, about, route: route.value }, hooks)
    : openShelfMap(state, { folder: shelf, route: route.value }, hooks);
}

async function openMapFile(
  state: EngineState,
  { file, about, route }: { file: NamedFile; about: NamedFile | undefined; route: Route | undefined },
  { signal, onProgress }: WorkHooks,
): Promise<Result<MapSummary>> {
  const from = await stateOf(about === undefined ? [file] : [file, about]);
  // a page that is loaded again asks for the same once more
  if (state.map && from !== undefined && from === state.mapFrom) return ok(sumUpMap(state.map, file.name));
  const opened = await openMap([file.path], route, {
    signal,
    onProgress: (share) => onProgress({ what: 'Reading the map', share }),
  });
  if (signal.aborted) return CANCELLED;
  if (!opened.ok) return underItsName(opened.error, file);
  const map = nameSources(opened.value, file);
  keepMap(state, map, from);
  state.mapInPart = about !== undefined;
  state.tiles = () => {
    const base = prepareBaseMap(map);
    return createTiles((z, x, y) => tileFeatures(base, z, x, y));
  };
  return ok(sumUpMap(map, file.name));
}

/** Nothing of the drives before is open any more: they were followed on another map. */
function keepMap(state: EngineState, map: Roads, from: string | undefined): void {
  state.map = map;
  state.mapFrom = from;
  state.mapInPart = false;
  state.cut = undefined;
  state.shelf?.close();
  state.shelf = undefined;
  state.drives.clear();
}

async function openShelfMap(
  state: EngineState,
  { folder, route }: { folder: string; route: Route | undefined },
  { signal, onProgress, lookUp }: WorkHooks,
): Promise<Result<MapSummary>> {
  onProgress({ what: 'Looking at the shelf' });
  const opened = await openShelfFor(folder, route, async () => {
    lookUp();
  });
  if (!opened.ok) return opened;
  if (signal.aborted) {
    opened.value.shelf.close();
    return CANCELLED;
  }
  const { shelf, roads, summary } = opened.value;
  keepMap(state, roads, undefined);
  state.shelf = shelf;
  state.tiles = () => createTiles(shelfTileCutter(shelf));
  return ok(summary);
}

/** Paths, sizes and times of files, by which one that was written to since is known; undefined where one is gone. */
async function stateOf(files: readonly NamedFile[]): Promise<string | undefined> {
  try {
    const there = await Promise.all(files.map(({ path }) => stat(path)));
    return JSON.stringify(files.map((file, i) => [file, there[i]?.size, there[i]?.mtimeMs]));
  } catch {
    return undefined;
  }
}

async function openDriveFile(
  state: EngineState,
  { driveId, file, track, unread }: RequestTo<'openDrive'>,
  { signal, onProgress, lookUp }: WorkHooks,
): Promise<Result<FollowedDrive>> {
  const roads = state.map;
  if (!roads) return NO_MAP;
  onProgress({ what: 'Reading the drive' });
  const read = await readDriveFile(file);
  if (!read.ok) return read;
  const chosen = chooseTrack(read.value, track);
  if (!chosen.ok) return chosen;
  const { route, note } = chosen.value;
  const origin = await originOf(file, read.value.routes.indexOf(route) + 1);
  onProgress({ what: 'Following the drive' });
  await letMessagesIn();
  if (signal.aborted) return CANCELLED;
  // a page that comes later, or is loaded again, asks for the same once more
  const followed = openAlready(state, origin) ?? (await follow({ route, roads }, state, lookUp));
  if (!followed.ok) return followed;
  const notes = [...(note === undefined ? [] : [note]), ...read.value.notes];
  const opened: OpenDrive = {
    route,
    file: file.name,
    ...followed.value,
    roads,
    notes,
    ...given({ origin, unread }),
  };
  keepDrive(state.drives, driveId, opened);
  return ok(driveForPage(driveId, opened, read.value.routes));
}

type Followed = Pick<OpenDrive, 'drive' | 'swapped'>;

/** A drive of the same bytes that was followed on the open map. */
function openAlready({ drives }: EngineState, origin: OpenDrive['origin']): Result<Followed> | undefined {
  if (origin === undefined) return undefined;
  for (const { drive, swapped, origin: of } of drives.values())
    if (of?.gpx === origin.gpx && of.track === origin.track) return ok({ drive, ...given({ swapped }) });
  return undefined;
}

async function follow(
  { route, roads }: Pick<OpenDrive, 'route' | 'roads'>,
  state: EngineState,
  lookUp: () => void,
): Promise<Result<Followed>> {
  const drive = followRoads(route, roads, { lookUp });
  const endless = refuseEndless(drive);
  if (endless !== undefined) return { ok: false, error: endless };
  // what was read of a file about this drive alone knows nothing of another place
  const isSwapped = await liesSwapped({ route, drive }, async (about) =>
    state.shelf === undefined
      ? state.map
      : (await roadsFromShelf(state.shelf, about, async () => lookUp())).roads,
  );
  return ok({ drive, ...(isSwapped && { swapped: true }) });
}

async function originOf({ path }: NamedFile, track: number): Promise<OpenDrive['origin']> {
  const bytes = await readBytes(path, 'drive', GPX_MAX_BYTES);
  return bytes.ok ? { gpx: sha256Of(bytes.value), track } : undefined;
}

function tileAt(state: EngineState, place: RequestTo<'tile'>): Result<TileFeatures> {
  if (!state.map) return NO_MAP;
  state.cut ??= state.tiles?.();
  return state.cut?.at(place) ?? NO_MAP;
}

function stripOfOpenDrive(state: EngineState, { driveId, country }: RequestTo<'strip'>): Result<Strip> {
  const found = findDrive(state, driveId);
  if (!found.ok) return found;
  const { drive, roads } = found.value;
  return ok(stripOf(drive, roads, country));
}

/** Messages that wait, a cancellation among them, are heard before long work begins. */
function letMessagesIn(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}
