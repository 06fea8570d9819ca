import { toDeg, toRad, wrapLon } from './angles.ts';

/** Mean Earth radius, metres (IUGG: (2a + b) / 3 of the WGS 84 ellipsoid). */
export const EARTH_RADIUS_M = 6_371_008.8;

/** Metres of a degree of latitude, and of longitude at the equator, on the mean sphere. */
export const METRES_PER_DEGREE = toRad(1) * EARTH_RADIUS_M;

/**
 * Great-circle distance on the mean sphere, metres (haversine). Arguments in degrees.
 * Within 0.6 % of the ellipsoid anywhere.
 */
export function distanceM(lat1: number, lon1: number, lat2: number, lon2: number): number {
  const sinLat = Math.sin(toRad(lat2 - lat1) / 2);
  const sinLon = Math.sin(toRad(lon2 - lon1) / 2);
  const a = sinLat * sinLat + sinLon * sinLon * Math.cos(toRad(lat1)) * Math.cos(toRad(lat2));
  // rounding can lift a over 1 for antipodes
  return 2 * EARTH_RADIUS_M * Math.asin(Math.sqrt(Math.min(1, a)));
}

/** Direction at the first place towards the second along the great circle, degrees clockwise from north, 0 ≤ b < 360; 0 for one and the same place. */
export function bearingDeg(lat1: number, lon1: number, lat2: number, lon2: number): number {
  const dLon = toRad(lon2 - lon1);
  const cosLat2 = Math.cos(toRad(lat2));
  const east = Math.sin(dLon) * cosLat2;
  const north =
    Math.cos(toRad(lat1)) * Math.sin(toRad(lat2)) - Math.sin(toRad(lat1)) * cosLat2 * Math.cos(dLon);
  const degrees = toDeg(Math.atan2(east, north));
  // a tiny negative angle plus 360 rounds to 360 itself
  return degrees < 0 ? (degrees + 360) % 360 : degrees;
}

/** A place on the Earth, degrees. */
export interface Place {
  readonly lat: number;
  readonly lon: number;
}

/** The place so far (0…1) on the way between two near ones, the short way round across the antimeridian. */
export function placeBetween(a: Place, b: Place, share: number): Place {
  return { lat: a.lat + share * (b.lat - a.lat), lon: wrapLon(a.lon + share * wrapLon(b.lon - a.lon)) };
}
