/** Mean Earth radius, metres (IUGG: (2a + b) / 3 of the WGS 84 ellipsoid). */
export const EARTH_RADIUS_M = 6_371_008.8;

const RAD = Math.PI / 180;
const METRES_PER_DEGREE = EARTH_RADIUS_M * RAD;

/**
 * Great-circle distance on the mean sphere, metres (haversine). Arguments in degrees.
 * Within 0.6 % of the ellipsoid anywhere.
 */
export function distanceM(lat1: number, lon1: number, lat2: number, lon2: number): number {
  const sinLat = Math.sin(((lat2 - lat1) * RAD) / 2);
  const sinLon = Math.sin(((lon2 - lon1) * RAD) / 2);
  const a = sinLat * sinLat + sinLon * sinLon * Math.cos(lat1 * RAD) * Math.cos(lat2 * RAD);
  // rounding can lift a over 1 for antipodes
  return 2 * EARTH_RADIUS_M * Math.asin(Math.sqrt(Math.min(1, a)));
}

/** Direction at the first place towards the second along the great circle, degrees clockwise from north, 0 ≤ b < 360; 0 for one and the same place. */
export function bearingDeg(lat1: number, lon1: number, lat2: number, lon2: number): number {
  const dLon = (lon2 - lon1) * RAD;
  const cosLat2 = Math.cos(lat2 * RAD);
  const east = Math.sin(dLon) * cosLat2;
  const north = Math.cos(lat1 * RAD) * Math.sin(lat2 * RAD) - Math.sin(lat1 * RAD) * cosLat2 * Math.cos(dLon);
  const degrees = Math.atan2(east, north) / RAD;
  // a tiny negative angle plus 360 rounds to 360 itself
  return degrees < 0 ? (degrees + 360) % 360 : degrees;
}

/** The smaller angle between two directions in degrees, 0 to 180. */
export function turnDeg(fromDeg: number, toDeg: number): number {
  const turn = Math.abs(fromDeg - toDeg) % 360;
  return turn > 180 ? 360 - turn : turn;
}

/** The same longitude difference, brought into -180…180 so that the antimeridian is no jump. */
export function wrapLon(degrees: number): number {
  if (degrees >= -180 && degrees <= 180) return degrees;
  const turns = (((degrees + 180) % 360) + 360) % 360;
  return turns - 180;
}

/**
 * Flat metres about one place: x east, y north. Linear, so straight stays straight.
 * Lengths are right within 0.1 % up to 3 km from the origin below 60° of latitude.
 */
export interface LocalFrame {
  readonly lat0: number;
  readonly lon0: number;
  readonly metresPerDegLat: number;
  readonly metresPerDegLon: number;
  toXY(lat: number, lon: number): { x: number; y: number };
  fromXY(x: number, y: number): { lat: number; lon: number };
}

/** A flat frame about a place (degrees). At a pole x is meaningless. */
export function localFrame(lat0: number, lon0: number): LocalFrame {
  const metresPerDegLat = METRES_PER_DEGREE;
  const metresPerDegLon = METRES_PER_DEGREE * Math.max(1e-9, Math.cos(lat0 * RAD));
  return {
    lat0,
    lon0,
    metresPerDegLat,
    metresPerDegLon,
    toXY: (lat, lon) => ({ x: wrapLon(lon - lon0) * metresPerDegLon, y: (lat - lat0) * metresPerDegLat }),
    fromXY: (x, y) => ({ lat: lat0 + y / metresPerDegLat, lon: wrapLon(lon0 + x / metresPerDegLon) }),
  };
}
