import { LatLng } from 'leaflet';

/** From the unit square (mercator) to degrees. */
export function toLatLng(x: number, y: number): LatLng {
  return new LatLng((Math.atan(Math.sinh(Math.PI * (1 - 2 * y))) * 180) / Math.PI, (x - 0.5) * 360);
}
