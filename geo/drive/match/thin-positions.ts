import { distanceM } from '../../earth/sphere.ts';
import type { RouteSegment } from '../gpx/route.ts';

/** The positions of a segment that take part in the match. */
export interface Positions {
  readonly lat: readonly number[];
  readonly lon: readonly number[];
  /** positions after which others were left out as a receiver's slips */
  readonly healed: ReadonlySet<number>;
}

/** Leaves out positions nearer than `thinM` to the last one kept; the first and the last always stay. */
export function thinPositions(segment: Pick<RouteSegment, 'lat' | 'lon'>, thinM: number): Positions {
  const lat: number[] = [];
  const lon: number[] = [];
  const last = segment.lat.length - 1;
  for (let i = 0; i <= last; i++) {
    const a = segment.lat[i]!;
    const b = segment.lon[i]!;
    const keptLat = lat.at(-1);
    const keptLon = lon.at(-1);
    if (keptLat !== undefined && keptLon !== undefined && distanceM(keptLat, keptLon, a, b) < thinM) {
      if (i < last) continue;
      // the end is where the drive ends: it replaces its near neighbour, unless that is the start
      if (lat.length > 1) {
        lat.pop();
        lon.pop();
      }
    }
    lat.push(a);
    lon.push(b);
  }
  return { lat, lon, healed: new Set() };
}
