const DENSITY_MAX = 2;

/** Device pixels to the pixel, for canvases: more than two are not seen. */
export function densityNow(): number {
  return Math.min(DENSITY_MAX, Math.max(1, devicePixelRatio));
}

/** Pixels across the whole world at a zoom, of tiles 256 pixels wide. */
export function worldPx(zoom: number): number {
  return 256 * 2 ** zoom;
}
