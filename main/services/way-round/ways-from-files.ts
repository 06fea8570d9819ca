import { stat } from 'node:fs/promises';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { given } from '../../../geo/given.ts';
import { fail, type Result } from '../../../geo/result.ts';
import type { Reach } from '../../../geo/roads/discs.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { Cancelled } from '../map/map-reading.ts';
import { openMap } from '../map/open-map.ts';
import { readOnShelf } from '../shelf/roads-on-shelf.ts';
import { type PlannedOn, type PlanOnAnyMap, planOn, planRead } from './plan-read.ts';
import {
  type CheckOnAnyMap,
  type Found,
  type ReadRoads,
  type WaysWanted,
  waysOn,
  waysRead,
} from './ways-past.ts';

/** Map files of this many bytes together are read whole; of larger ones what lies far about the drive. */
const WHOLE_MAP_BYTES = 150 * 1024 * 1024;

/** Where the roads are: map files, or the shelf in that folder where none is named. */
export interface MapNamed {
  readonly mapPaths: readonly string[];
  readonly shelf: string;
}

/** Ways past what stops a drive, from the map it was checked on. */
export function waysFromFiles(
  map: MapNamed,
  check: CheckOnAnyMap,
  wanted: WaysWanted,
  signal?: AbortSignal,
): Promise<Result<Found>> {
  return onNamedMap(map, signal, {
    whole: (roads) => waysOn(roads, check, wanted),
    inPieces: (read) => waysRead(read, check, wanted),
  });
}

/** A drive laid out anew on the map named. */
export function planFromFiles(
  map: MapNamed,
  plan: PlanOnAnyMap,
  signal?: AbortSignal,
): Promise<Result<PlannedOn>> {
  return onNamedMap(map, signal, {
    whole: (roads) => planOn(roads, plan),
    inPieces: (read) => planRead(read, plan),
  });
}

/** Work that is done on all roads at once, or that reads them about lines. */
interface OnRoads<T> {
  whole(roads: Roads): Result<T>;
  inPieces(read: ReadRoads): Promise<Result<T>>;
}

export async function onNamedMap<T>(
  { mapPaths, shelf }: MapNamed,
  signal: AbortSignal | undefined,
  work: OnRoads<T>,
): Promise<Result<T>> {
  if (mapPaths.length === 0) return readOnShelf(shelf, signal, work.inPieces);
  const read = async (about: Pick<Route, 'segments'> | undefined, reach?: Reach): Promise<Roads> => {
    const opened = await openMap(mapPaths, about, {
      ...given({ signal, reach }),
    });
    if (opened.ok) return opened.value;
    throw opened.error.code === 'cancelled' ? new Cancelled() : new MapRefused(opened.error);
  };
  try {
    if ((await bytesOf(mapPaths)) <= WHOLE_MAP_BYTES) return work.whole(await read(undefined));
    return await work.inPieces(read);
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
  // one that is not there is told when it is opened
  const sizes = await Promise.all(
    paths.map((path) =>
      stat(path).then(
        ({ size }) => size,
        () => 0,
      ),
    ),
  );
  return sizes.reduce((sum, size) => sum + size, 0);
}
