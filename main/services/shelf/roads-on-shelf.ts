import { fail, ok, type Result } from '../../../geo/result.ts';
import type { DrawnRoute, Reach } from '../../../geo/roads/discs.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { listed, quote } from '../../../geo/units/text.ts';
import { codeOf } from '../files/system-error.ts';
import { Cancelled } from '../map/map-reading.ts';
import { type OpenShelf, openShelf } from './open-shelf.ts';
import { roadsFromShelf } from './roads-from-shelf.ts';
import { afterLacking } from './say-lacking.ts';
import { shelfUnreadable } from './shelf-unreadable.ts';

const NO_MAP =
  'No map is named and none is on the shelf. Name a file with --map MAP.osm.pbf, or put a map on the shelf: lanegauge shelf import MAP.osm.pbf, or lanegauge shelf fetch --route DRIVE.gpx --by region.';

/** Reads what the shelf knows about a line. Throws Cancelled, or Unreadable where all there is of it is damaged. */
export type ReadOnShelf = (about: DrawnRoute, reach?: Reach) => Promise<Roads>;

/** What the shelf knows along a drive; a sentence where it holds no map, or none that can be read. */
export function roadsOnShelf(
  folder: string,
  route: DrawnRoute,
  signal?: AbortSignal,
): Promise<Result<Roads>> {
  return readOnShelf(folder, signal, async (read) => ok(await read(route)));
}

/** Does some work on what the shelf knows; a sentence where it holds no map, or none that can be read. */
export async function readOnShelf<T>(
  folder: string,
  signal: AbortSignal | undefined,
  work: (read: ReadOnShelf) => Promise<Result<T>>,
): Promise<Result<T>> {
  let shelf: OpenShelf | undefined;
  const pause = async () => {
    if (signal?.aborted) throw new Cancelled();
  };
  try {
    shelf = await openShelf(folder);
    const open = shelf;
    if (open.maps === 0) return fail('shelf.empty', NO_MAP);
    if (open.parts.length === 0) throw new Unreadable(open);
    const damaged = new Set<string>(open.damaged);
    const worked = await work(async (about, reach) => {
      const read = await roadsFromShelf(open, about, pause, reach);
      for (const map of read.damaged) damaged.add(map);
      if (read.used.length === 0 && read.damaged.length > 0)
        throw new Unreadable({ damaged: read.damaged, forbidden: open.forbidden });
      return read.roads;
    });
    if (worked.ok) return worked;
    return {
      ok: false,
      error: afterLacking(worked.error, { damaged: [...damaged], forbidden: open.forbidden }),
    };
  } catch (error) {
    if (error instanceof Cancelled) return fail('cancelled', 'Cancelled.');
    if (error instanceof Unreadable) return fail('shelf.damaged', error.message);
    if (codeOf(error) === undefined) throw error;
    return shelfUnreadable(folder, error);
  } finally {
    shelf?.close();
  }
}

/** Nothing of what is wanted can be read, its maps being damaged or not for this user. */
class Unreadable extends Error {
  constructor({ damaged, forbidden }: Pick<OpenShelf, 'damaged' | 'forbidden'>) {
    const are = (names: readonly string[]) =>
      `${listed(names.map((name) => quote(name)))} ${names.length === 1 ? 'is' : 'are'}`;
    const why = [
      ...(damaged.length > 0 ? [`${are(damaged)} damaged. Mend with: lanegauge shelf verify --repair`] : []),
      ...(forbidden.length > 0
        ? [`${are(forbidden)} not for this user to read. Let the shelf’s folder be read, or import again.`]
        : []),
    ];
    super(`Nothing that the shelf holds along this drive can be read: ${why.join(' ')}`);
  }
}
