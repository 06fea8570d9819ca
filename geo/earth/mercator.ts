import { toDeg, toRad } from './angles.ts';
import { clamp } from './between.ts';
import type { Place } from './sphere.ts';

const LAT_MAX = 85.0511287798;

/** Web Mercator on the unit square: 0 at 180° W, 1 at 180° E. */
export function mercatorX(lon: number): number {
  return lon / 360 + 0.5;
}

/** Web Mercator on the unit square: 0 at 85.05° N, 1 at 85.05° S. */
export function mercatorY(lat: number): number {
  const sin = Math.sin(toRad(clamp(lat, -LAT_MAX, LAT_MAX)));
  return 0.5 - Math.log((1 + sin) / (1 - sin)) / (4 * Math.PI);
}

/** The place on the Earth, degrees, of one on the unit square. */
export function fromMercator(x: number, y: number): Place {
  return { lat: mercatorLat(y), lon: (x - 0.5) * 360 };
}

/** The latitude, degrees, of a place on the unit square. */
export function mercatorLat(y: number): number {
  return toDeg(Math.atan(Math.sinh(Math.PI * (1 - 2 * y))));
}

/** The equator of the ellipsoid that maps of this projection are made on (WGS 84), metres. */
const EQUATOR_M = 40_075_016.7;

/** Metres across the unit square at a latitude: the projection draws everything larger towards the poles. */
export function acrossM(lat: number): number {
  return EQUATOR_M * Math.cos(toRad(lat));
}
