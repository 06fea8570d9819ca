import { fail, ok, type Result } from '../../result.ts';
import { gpxText, type Waypoint, type WrittenRoute } from './gpx-text.ts';
import { readGpx } from './read-gpx.ts';

/**
 * Writes a drive as GPX 1.1, see `gpxText`. The text is read back before it is handed out.
 *
 * @returns a problem when there is nothing to drive or a number is not a place on Earth
 */
export function writeGpx(
  route: WrittenRoute,
  waypoints: readonly Waypoint[],
  creator: string,
): Result<string> {
  const text = gpxText(route, waypoints, creator);
  const back = readGpx(text);
  if (!back.ok) return fail('gpx.write', `The drive cannot be written as GPX: ${back.error.message}`);
  if (back.value.notes.length > 0)
    return fail('gpx.write', `The drive cannot be written as GPX: ${back.value.notes.join(' ')}`);
  return ok(text);
}
