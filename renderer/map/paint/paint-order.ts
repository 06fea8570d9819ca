import { TILE_PX, type TileFeatures } from '../../../geo/basemap/features.ts';
import type { Palette } from '../canvas/palette.ts';

/** What the page asks of the thread that paints. */
export interface PaintOrder {
  readonly id: number;
  readonly tile: TileFeatures;
  readonly palette: Palette;
  readonly density: number;
}

/** What it gets back. */
export interface Painted {
  readonly id: number;
  readonly picture: ImageBitmap;
}

/** Side of a painted tile, device pixels. */
export function paintedSide(density: number): number {
  return Math.round(TILE_PX * density);
}
