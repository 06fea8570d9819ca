import type { Mask } from '../roads/mask.ts';
import { LAYER_ZOOM } from './layers.ts';
import { numbersIn, rangeOfBox, type TileRange } from './tiles.ts';

/** Numbers of the tiles of each layer that a drive may need, ascending. */
export interface TilesAlong {
  readonly wide: readonly number[];
  readonly near: readonly number[];
  readonly far: readonly number[];
}

/** Which tiles hold everything that the mask keeps: roads as far as it reaches, small surroundings only near. */
export function tilesAlong(mask: Mask): TilesAlong {
  const reach = mask.boxes('reach');
  const touched = (boxes: typeof reach, zoom: number) => {
    const numbers = new Set<number>();
    let before: TileRange | undefined;
    for (const box of boxes) {
      const range = rangeOfBox(box, zoom);
      // neighbours along a drive mostly touch the same tiles
      if (before && sameRange(range, before)) continue;
      before = range;
      for (const number of numbersIn(range, zoom)) numbers.add(number);
    }
    return [...numbers].sort((a, b) => a - b);
  };
  return {
    wide: touched(reach, LAYER_ZOOM.wide),
    near: touched(mask.boxes('near'), LAYER_ZOOM.near),
    far: touched(reach, LAYER_ZOOM.far),
  };
}

function sameRange(a: TileRange, b: TileRange): boolean {
  return a.fromX === b.fromX && a.toX === b.toX && a.fromY === b.fromY && a.toY === b.toY;
}
