import { chooseRoute } from '../../../geo/drive/gpx/choose-route.ts';
import type { Route, RouteFile } from '../../../geo/drive/gpx/route.ts';
import { ok, type Result } from '../../../geo/result.ts';
import { GPX_MAX_BYTES } from '../../contract/limits.ts';
import { readAsKept } from '../files/read-as-kept.ts';
import { readRouteBytes } from '../route/read-route-file.ts';
import type { NamedFile } from './protocol.ts';
import { underItsName } from './true-names.ts';

/** Reads a drive's file; sentences name it as the user does. */
export async function readDriveFile({ path, name, sha256 }: NamedFile): Promise<Result<RouteFile>> {
  const bytes = await readAsKept({ path, what: 'drive', mostBytes: GPX_MAX_BYTES, sha256 });
  if (bytes.ok) return readRouteBytes(bytes.value, name);
  return underItsName(bytes.error, { path, name });
}

/** The route that is driven when nothing was chosen. */
export async function readOneRoute(file: NamedFile): Promise<Result<Route>> {
  const read = await readDriveFile(file);
  if (!read.ok) return read;
  const chosen = chooseRoute(read.value);
  return chosen.ok ? ok(chosen.value.route) : chosen;
}

/** All tracks and routes of the file as one line, for what lies about any of them: which is driven may be chosen later. */
export async function readAllRoutes(file: NamedFile): Promise<Result<Route>> {
  const read = await readDriveFile(file);
  if (!read.ok) return read;
  const chosen = chooseRoute(read.value);
  if (!chosen.ok) return chosen;
  const segments = read.value.routes.flatMap((route) => route.segments);
  return ok({ ...chosen.value.route, segments });
}
