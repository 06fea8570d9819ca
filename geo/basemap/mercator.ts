const RAD = Math.PI / 180;
const LAT_MAX = 85.0511287798;

/** Web Mercator on the unit square: 0 at 180° W, 1 at 180° E. */
export function mercatorX(lon: number): number {
  return lon / 360 + 0.5;
}

/** Web Mercator on the unit square: 0 at 85.05° N, 1 at 85.05° S. */
export function mercatorY(lat: number): number {
  const sin = Math.sin(Math.max(-LAT_MAX, Math.min(LAT_MAX, lat)) * RAD);
  return 0.5 - Math.log((1 + sin) / (1 - sin)) / (4 * Math.PI);
}
