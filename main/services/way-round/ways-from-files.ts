import { stat } from 'node:fs/promises';
import { fail, type Result } from '../../../geo/result.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { Cancelled } from '../map/map-reading.ts';
import { openMap } from '../map/open-map.ts';
import { readOnShelf } from '../shelf/roads-on-shelf.ts';
import { type CheckOnAnyMap, type Found, type WaysWanted, waysOn, waysRead } from './ways-past.ts';

/** Map files of this many bytes together are read whole; of larger ones what lies far about the drive. */
const WHOLE_MAP_BYTES = 150 * 1024 * 1024;

/** Where the roads are: map files, or the shelf in that folder where none is named. */
export interface MapNamed {
  readonly mapPaths: readonly string[];
  readonly shelf: string;
}

/** Ways past what stops a drive, from the map it was checked on. */
export async function waysFromFiles(
  { mapPaths, shelf }: MapNamed,
  check: CheckOnAnyMap,
  wanted: WaysWanted,
  signal?: AbortSignal,
): Promise<Result<Found>> {
  if (mapPaths.length === 0) return readOnShelf(shelf, signal, (read) => waysRead(read, check, wanted));
  const read = async (about: Parameters<typeof openMap>[1], reachM?: number): Promise<Roads> => {
    const opened = await openMap(mapPaths, about, {
      ...(signal && { signal }),
      ...(reachM !== undefined && { reach: { reachM } }),
    });
    if (opened.ok) return opened.value;
    throw opened.error.code === 'cancelled' ? new Cancelled() : new MapRefused(opened.error);
  };
  try {
    if ((await bytesOf(mapPaths)) <= WHOLE_MAP_BYTES) return waysOn(await read(undefined), check, wanted);
    return await waysRead((about, reachM) => read({ ...check.route, ...about }, reachM), check, wanted);
  } catch (error) {
    if (error instanceof Cancelled) return fail('cancelled', 'Cancelled.');
    if (error instanceof MapRefused) return { ok: false, error: error.problem };
    throw error;
  }
}

/** A map that could be read for the check and now cannot. */
class MapRefused extends Error {
  readonly problem: { readonly code: string; readonly message: string };
  constructor(problem: { readonly code: string; readonly message: string }) {
    super(problem.message);
    this.problem = problem;
  }
}

async function bytesOf(paths: readonly string[]): Promise<number> {
  const sizes = await Promise.all(paths.map((path) => stat(path).then(({ size }) => size)));
  return sizes.reduce((sum, size) => sum + size, 0);
}
