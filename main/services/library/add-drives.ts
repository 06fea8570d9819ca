import { isDrivable } from '../../../geo/drive/gpx/gpx-tracks.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { cumulativeM } from '../../../geo/drive/gpx/route-length.ts';
import { given } from '../../../geo/given.ts';
import { isDeleted } from '../../../geo/library/bin.ts';
import type { DriveBody } from '../../../geo/library/body/drive.ts';
import type { Item } from '../../../geo/library/item.ts';
import { driveId } from '../../../geo/library/record-name.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { readRouteBytes } from '../route/read-route-file.ts';
import type { Library } from './library.ts';

/** A GPX file for the library. */
export interface DriveFile {
  readonly bytes: Uint8Array;
  /** its name without a folder */
  readonly name: string;
  /** local wall time kept with its drives */
  readonly leaveAt?: string;
  /** ISO 8601; the clock's where left out */
  readonly made?: string;
}

/** What became of one drive of a file. */
export interface AddedDrive {
  readonly item: Item<'drive'>;
  /** `there`: it was in the library already; `back`: it lay in the bin */
  readonly was: 'new' | 'there' | 'back';
}

/**
 * Puts the drives of a GPX file into the library: its tracks, the days of a tour where there are several; its routes
 * where it has no track. The same file is the same drives, on whatever computer it is added.
 */
export async function addDrives(library: Library, file: DriveFile): Promise<Result<AddedDrive[]>> {
  const read = readRouteBytes(file.bytes, file.name);
  if (!read.ok) return read;
  const numbered = read.value.routes.map((route, i) => ({ route, track: i + 1 }));
  const drivable = numbered.filter(({ route }) => isDrivable(route));
  const tracks = drivable.filter(({ route }) => route.kind === 'track');
  const days = tracks.length > 0 ? tracks : drivable;
  if (days.length === 0)
    return fail(
      'route.none',
      `${file.name}: the file holds nothing to drive. Save a track or a route in it.`,
    );
  const kept = await library.keepBytes('gpx', file.bytes);
  if (!kept.ok) return kept;
  const added: AddedDrive[] = [];
  for (const [i, { route, track }] of days.entries()) {
    const day = days.length > 1 ? { number: i + 1, of: days.length } : undefined;
    const one = await addOne(library, bodyOf(route, { track, day, gpx: kept.value, file }), file.made);
    if (!one.ok) return one;
    added.push(one.value);
  }
  return ok(added);
}

async function addOne(
  library: Library,
  body: DriveBody,
  made: string | undefined,
): Promise<Result<AddedDrive>> {
  const id = driveId(body.gpx, body.track);
  const found = library.find('drive', id);
  if (found && !isDeleted(found)) return ok({ item: found, was: 'there' });
  if (found) {
    const back = await library.restore(id);
    const item = library.find('drive', id);
    if (back.ok && item) return ok({ item, was: 'back' });
  }
  const put = await library.put({ kind: 'drive', id, body, ...given({ made }) });
  return put.ok ? ok({ item: put.value, was: found ? 'back' : 'new' }) : put;
}

interface Of {
  readonly gpx: string;
  readonly track: number;
  readonly day: { readonly number: number; readonly of: number } | undefined;
  readonly file: DriveFile;
}

function bodyOf(route: Route, { gpx, track, day, file }: Of): DriveBody {
  const lengthM = route.segments.reduce((sum, segment) => sum + (cumulativeM(segment).at(-1) ?? 0), 0);
  const [first, last] = [route.segments[0], route.segments.at(-1)];
  return {
    gpx,
    file: file.name.slice(0, 255),
    track,
    trackName: route.name.slice(0, 1000),
    lengthM: Math.round(lengthM),
    from: [first?.lat[0] ?? 0, first?.lon[0] ?? 0],
    to: [last?.lat.at(-1) ?? 0, last?.lon.at(-1) ?? 0],
    ...given({ day, leaveAt: file.leaveAt }),
  };
}
