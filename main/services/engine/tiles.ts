import type { TileFeatures } from '../../../geo/basemap/features.ts';
import { prepareBaseMap } from '../../../geo/basemap/prepare.ts';
import { tileFeatures } from '../../../geo/basemap/tile-features.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import type { Roads } from '../../../geo/roads/roads.ts';

/** Tiles kept ready: three full views of a large screen and their surroundings. */
const KEPT_MAX = 200;

export interface Tiles {
  at(place: { readonly z: number; readonly x: number; readonly y: number }): Result<TileFeatures>;
}

/** Cuts the tiles of one map; those asked for last are kept. */
export function createTiles(roads: Roads): Tiles {
  const map = prepareBaseMap(roads);
  const kept = new Map<string, TileFeatures>();
  return {
    at({ z, x, y }) {
      const across = 2 ** z;
      if (x >= across || y >= across)
        return fail('tile.nowhere', `There is no square ${x}/${y} at zoom ${z}.`);
      const key = `${z}/${x}/${y}`;
      const tile = kept.get(key) ?? tileFeatures(map, z, x, y);
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
