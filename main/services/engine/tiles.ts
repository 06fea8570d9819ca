import type { TileFeatures } from '../../../geo/basemap/features.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';

/** Tiles kept ready: three full views of a large screen and their surroundings. */
const KEPT_MAX = 200;

export interface Tiles {
  at(place: { readonly z: number; readonly x: number; readonly y: number }): Result<TileFeatures>;
}

/** Keeps the tiles asked for last. @param cut makes one that is asked for */
export function createTiles(cut: (z: number, x: number, y: number) => TileFeatures): Tiles {
  const kept = new Map<string, TileFeatures>();
  return {
    at({ z, x, y }) {
      const across = 2 ** z;
      if (x >= across || y >= across)
        return fail('tile.nowhere', `There is no square ${x}/${y} at zoom ${z}.`);
      const key = `${z}/${x}/${y}`;
      const tile = kept.get(key) ?? cut(z, x, y);
      kept.delete(key);
      kept.set(key, tile);
      for (const oldest of kept.keys()) {
        if (kept.size <= KEPT_MAX) break;
        kept.delete(oldest);
      }
      return ok(tile);
    },
  };
}
