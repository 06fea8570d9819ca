import { toRad, wrapLon } from './angles.ts';
import type { Point } from './point.ts';
import { METRES_PER_DEGREE } from './sphere.ts';

/**
 * Flat metres about one place: x east, y north. Linear, so straight stays straight.
 * Lengths are right within 0.1 % up to 3 km from the origin below 60° of latitude.
 */
export interface LocalFrame {
  readonly lat0: number;
  readonly lon0: number;
  readonly metresPerDegLat: number;
  readonly metresPerDegLon: number;
  toXY(lat: number, lon: number): Point;
  fromXY(x: number, y: number): { lat: number; lon: number };
}

/** A flat frame about a place (degrees). At a pole x is meaningless. */
export function localFrame(lat0: number, lon0: number): LocalFrame {
  const metresPerDegLat = METRES_PER_DEGREE;
  const metresPerDegLon = METRES_PER_DEGREE * Math.max(1e-9, Math.cos(toRad(lat0)));
  return {
    lat0,
    lon0,
    metresPerDegLat,
    metresPerDegLon,
    toXY: (lat, lon) => ({ x: wrapLon(lon - lon0) * metresPerDegLon, y: (lat - lat0) * metresPerDegLat }),
    fromXY: (x, y) => ({ lat: lat0 + y / metresPerDegLat, lon: wrapLon(lon0 + x / metresPerDegLon) }),
  };
}
