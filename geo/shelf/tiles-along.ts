import type { Mask } from '../roads/mask.ts';
import { LAYER_ZOOM } from './layers.ts';
import { numbersIn, rangeOfBox } from './tiles.ts';

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
    for (const box of boxes) for (const number of numbersIn(rangeOfBox(box, zoom), zoom)) numbers.add(number);
    return [...numbers].sort((a, b) => a - b);
  };
  return {
    wide: touched(reach, LAYER_ZOOM.wide),
    near: touched(mask.boxes('near'), LAYER_ZOOM.near),
    far: touched(reach, LAYER_ZOOM.far),
  };
}
