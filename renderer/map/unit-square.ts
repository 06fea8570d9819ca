import { LatLng } from 'leaflet';
import { fromMercator } from '../../geo/earth/mercator.ts';

/** From the unit square (mercator) to degrees. */
export function toLatLng(x: number, y: number): LatLng {
  const { lat, lon } = fromMercator(x, y);
  return new LatLng(lat, lon);
}
