import { given } from '../../../../geo/given.ts';
import type { FollowedDrive } from '../../../contract/followed-drive.ts';
import { roadsFromShelf, type ShelfRoads } from '../../shelf/roads-from-shelf.ts';
import type { ReadRoads } from '../../way-round/ways-past.ts';
import type { EngineState } from '../state.ts';

/**
 * Roads of the open shelf about any line; undefined where a file is open, of which all there is has been read.
 * @param hear is told what was read each time: which maps, and of which something could not be read
 */
export function readShelf(
  { shelf }: EngineState,
  lookUp: () => void,
  hear: (read: ShelfRoads) => void = () => {},
): ReadRoads | undefined {
  if (shelf === undefined) return undefined;
  const pause = async () => lookUp();
  return async (about, reach) => {
    const read = await roadsFromShelf(shelf, about, pause, reach);
    hear(read);
    return read.roads;
  };
}

/** The maps that a drive made here rests on, as the page is told. */
export function mapsUsed({ used, roads }: ShelfRoads): NonNullable<FollowedDrive['shelf']> {
  return {
    maps: [...new Set(used.map(({ map }) => map))],
    sources: roads.sources.map(({ dataDate }) => given({ dataDate })),
  };
}
