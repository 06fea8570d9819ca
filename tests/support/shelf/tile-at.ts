import { mercatorX, mercatorY } from '../../../geo/earth/mercator.ts';
import type { Tile } from '../../../geo/shelf/tiles.ts';

/** Tile of a zoom in which a place (degrees) lies. */
export function tileAt(lat: number, lon: number, zoom: number): Tile {
  const across = 2 ** zoom;
  const cell = (share: number) => Math.min(across - 1, Math.max(0, Math.floor(share * across)));
  return { x: cell(mercatorX(lon)), y: cell(mercatorY(lat)) };
}
