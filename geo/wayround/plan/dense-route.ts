import type { Drive } from '../../drive/drive.ts';
import type { Route } from '../../drive/gpx/route.ts';
import { lineBetween } from '../../drive/line-between.ts';
import { distanceM } from '../../earth/sphere.ts';
import type { Roads } from '../../roads/roads.ts';

/** No two positions lie farther apart, so that any device shows this road and no other. Metres. */
const APART_M = 40;

/** A drive as a track: every node it passes, and places between where those lie far apart. */
export function denseRoute(drive: Drive, roads: Roads, name: string): Route {
  const lat: number[] = [];
  const lon: number[] = [];
  for (const [toLon, toLat] of lineBetween(drive, roads, 0, drive.lengthM)) {
    const [fromLat, fromLon] = [lat.at(-1), lon.at(-1)];
    if (fromLat !== undefined && fromLon !== undefined) {
      const steps = Math.ceil(distanceM(fromLat, fromLon, toLat, toLon) / APART_M);
      for (let step = 1; step < steps; step++) {
        lat.push(fromLat + ((toLat - fromLat) * step) / steps);
        lon.push(fromLon + ((toLon - fromLon) * step) / steps);
      }
    }
    lat.push(toLat);
    lon.push(toLon);
  }
  const timeMs = new Float64Array(lat.length).fill(Number.NaN);
  const segment = { lat: Float64Array.from(lat), lon: Float64Array.from(lon), timeMs };
  return { name, kind: 'track', number: 1, segments: [segment] };
}
