import { distanceM } from '../../earth/sphere.ts';
import type { Route, RouteSegment } from './route.ts';

/** Metres driven up to each position of one segment: the first is 0, the last the segment's length. */
export function cumulativeM(segment: Pick<RouteSegment, 'lat' | 'lon'>): Float64Array {
  const { lat, lon } = segment;
  const along = new Float64Array(lat.length);
  let total = 0;
  for (let i = 1; i < lat.length; i++) {
    total += distanceM(lat[i - 1]!, lon[i - 1]!, lat[i]!, lon[i]!);
    along[i] = total;
  }
  return along;
}

/** How many positions are driven, shape points included. */
export function countPositions(route: Pick<Route, 'segments'>): number {
  return route.segments.reduce((sum, segment) => sum + segment.lat.length, 0);
}
