import { checkDrive } from '../../../geo/check.ts';
import type { Drive } from '../../../geo/drive/drive.ts';
import { chooseRoute } from '../../../geo/drive/gpx/choose-route.ts';
import type { Route, RouteFile } from '../../../geo/drive/gpx/route.ts';
import { countPositions } from '../../../geo/drive/gpx/route-length.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import { stripOf } from '../../../geo/drive/strip/strip-of.ts';
import { matchLengths } from '../../../geo/drive/sum-up.ts';
import { readLeaving } from '../../../geo/drive/times/leaving.ts';
import { given } from '../../../geo/given.ts';
import { weighForTheWay } from '../../../geo/load/tanks/on-the-way.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { GPX_MAX_BYTES } from '../../contract/limits.ts';
import { PROGRAM } from '../../version.ts';
import { readBytes } from '../files/read-bytes.ts';
import { openMap } from '../map/open-map.ts';
import { readRouteBytes } from '../route/read-route-file.ts';
import { DRIVES_MAX } from './lasting-engine.ts';
import { legsForPage } from './legs-for-page.ts';
import type { EngineHandlers, NamedFile } from './protocol.ts';
import { sumUpMap } from './sum-up-map.ts';
import { createTiles, type Tiles } from './tiles.ts';
import { nameSources, underItsName } from './true-names.ts';

interface OpenDrive {
  readonly route: Route;
  readonly file: string;
  readonly drive: Drive;
  readonly notes: readonly string[];
}

const CANCELLED = fail('cancelled', 'Cancelled.');

/** The engine's state and what it answers: one open map, and the drives followed on it. */
export function createHandlers(): EngineHandlers {
  let map: Roads | undefined;
  let tiles: Tiles | undefined;
  const drives = new Map<string, OpenDrive>();

  return {
    async openMap({ file, about }, { signal, onProgress }) {
      let route: Route | undefined;
      if (about) {
        const read = await readDriveFile(about);
        if (!read.ok) return read;
        const chosen = chooseRoute(read.value);
        if (!chosen.ok) return chosen;
        route = chosen.value.route;
      }
      const opened = await openMap([file.path], route, {
        signal,
        onProgress: (share) => onProgress({ what: 'Reading the map', share }),
      });
      if (signal.aborted) return CANCELLED;
      if (!opened.ok) return underItsName(opened.error, file);
      map = nameSources(opened.value, file);
      tiles = undefined;
      drives.clear();
      return ok(sumUpMap(map, file.name));
    },

    async openDrive({ driveId, file, track }, { signal, onProgress }) {
      const roads = map;
      if (!roads) return fail('no-map', 'No map is open. Open a map first.');
      onProgress({ what: 'Reading the drive' });
      const read = await readDriveFile(file);
      if (!read.ok) return read;
      const chosen = chooseTrack(read.value, track);
      if (!chosen.ok) return chosen;
      const { route, note } = chosen.value;
      onProgress({ what: 'Following the drive' });
      await letMessagesIn();
      if (signal.aborted) return CANCELLED;
      const drive = followRoads(route, roads);
      const notes = [...(note === undefined ? [] : [note]), ...read.value.notes];
      drives.set(driveId, { route, file: file.name, drive, notes });
      for (const id of drives.keys()) if (drives.size > DRIVES_MAX) drives.delete(id);
      return ok({
        driveId,
        name: route.name,
        file: file.name,
        tracks: read.value.routes.map((each) => ({
          kind: each.kind,
          number: each.number,
          name: each.name,
          positions: countPositions(each),
        })),
        taken: read.value.routes.indexOf(route) + 1,
        lengthM: drive.lengthM,
        legs: legsForPage(drive, roads),
        guessed: [...drive.guessed],
        doubtful: [...drive.doubtful],
        match: matchLengths(drive),
        notes,
      });
    },

    async check({ driveId, vehicle, load, leaveAt, margins, country, made }) {
      const opened = drives.get(driveId);
      if (!map || !opened)
        return fail(map ? 'no-drive' : 'no-map', 'That drive is no longer open. Open it again.');
      const leaving = leaveAt === undefined ? undefined : readLeaving(leaveAt, opened.drive, map, country);
      if (leaving?.ok === false) return leaving;
      const loaded = load === undefined ? undefined : weighForTheWay(vehicle, load.items);
      if (loaded?.ok === false) return loaded;
      return ok(
        checkDrive({
          route: opened.route,
          file: opened.file,
          drive: opened.drive,
          roads: map,
          card: vehicle,
          ...given({ load: loaded?.value, country, margins, leaving: leaving?.value }),
          notes: opened.notes,
          program: PROGRAM,
          made,
        }),
      );
    },

    async tile(place) {
      if (!map) return fail('no-map', 'No map is open. Open a map first.');
      tiles ??= createTiles(map);
      return tiles.at(place);
    },

    async strip({ driveId, country }) {
      const opened = drives.get(driveId);
      if (!map || !opened)
        return fail(map ? 'no-drive' : 'no-map', 'That drive is no longer open. Open it again.');
      return ok(stripOf(opened.drive, map, country));
    },
  };
}

async function readDriveFile({ path, name }: NamedFile): Promise<Result<RouteFile>> {
  const bytes = await readBytes(path, 'drive', GPX_MAX_BYTES);
  if (bytes.ok) return readRouteBytes(bytes.value, name);
  return underItsName(bytes.error, { path, name });
}

/** The page chooses by place in the list it was given, so a track that is called "2" is no trap. */
function chooseTrack(file: RouteFile, track: number | undefined) {
  if (track === undefined) return chooseRoute(file);
  const route = file.routes[track - 1];
  if (!route)
    return fail(
      'route.unknown',
      `The file has ${file.routes.length} tracks and routes; there is no ${track}.`,
    );
  return chooseRoute({ ...file, routes: [route] });
}

/** Messages that wait, a cancellation among them, are heard before long work begins. */
function letMessagesIn(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}
