import { fail, ok, type Result } from '../../../geo/result.ts';
import type { DrawnRoute } from '../../../geo/roads/discs.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { listed, quote } from '../../../geo/units/text.ts';
import { codeOf, messageOf } from '../files/system-error.ts';
import { Cancelled } from '../map/map-reading.ts';
import { type OpenShelf, openShelf } from './open-shelf.ts';
import { roadsFromShelf } from './roads-from-shelf.ts';

const NO_MAP =
  'No map is named and none is on the shelf. Name a file with --map MAP.osm.pbf, or put a map on the shelf: lanegauge shelf import MAP.osm.pbf, or lanegauge shelf fetch --route DRIVE.gpx --by region.';

/** What the shelf knows along a drive; a sentence where it holds no map, or none that can be read. */
export async function roadsOnShelf(
  folder: string,
  route: DrawnRoute,
  signal?: AbortSignal,
): Promise<Result<Roads>> {
  let shelf: OpenShelf | undefined;
  try {
    shelf = await openShelf(folder);
    if (shelf.maps === 0) return fail('shelf.empty', NO_MAP);
    if (shelf.parts.length === 0)
      return fail(
        'shelf.damaged',
        `No map on the shelf can be read: ${listed(shelf.damaged.map((name) => quote(name)))} ${shelf.damaged.length === 1 ? 'is' : 'are'} damaged. Mend with: lanegauge shelf verify --repair`,
      );
    const read = await roadsFromShelf(shelf, route, async () => {
      if (signal?.aborted) throw new Cancelled();
    });
    if (read.used.length === 0 && read.damaged.length > 0)
      return fail(
        'shelf.damaged',
        `Nothing that the shelf holds along this drive can be read: ${listed(read.damaged.map((name) => quote(name)))} damaged. Mend with: lanegauge shelf verify --repair`,
      );
    return ok(read.roads);
  } catch (error) {
    if (error instanceof Cancelled) return fail('cancelled', 'Cancelled.');
    if (codeOf(error) === undefined) throw error;
    return fail('shelf.unreadable', `The shelf in ${folder} could not be read: ${messageOf(error)}.`);
  } finally {
    shelf?.close();
  }
}
