import { roadsFromShelf } from '../../shelf/roads-from-shelf.ts';
import type { ReadRoads } from '../../way-round/ways-past.ts';
import type { EngineState } from '../state.ts';

/**
 * Roads of the open shelf about any line; undefined where a file is open, of which all there is has been read.
 * @param hear is told the names of maps of which something could not be read
 */
export function readShelf(
  { shelf }: EngineState,
  lookUp: () => void,
  hear: (damaged: readonly string[]) => void = () => {},
): ReadRoads | undefined {
  if (shelf === undefined) return undefined;
  const pause = async () => lookUp();
  return async (about, reach) => {
    const { roads, damaged } = await roadsFromShelf(shelf, about, pause, reach);
    hear(damaged);
    return roads;
  };
}
