import { bearingDeg } from './measure.ts';
import type { RouteSegment } from './route.ts';

/**
 * Direction of travel at each position of a segment, degrees clockwise from north: towards the next position that
 * lies elsewhere; the last ones keep the direction of arrival. NaN throughout when the segment never moves.
 */
export function headingsDeg({ lat, lon }: Pick<RouteSegment, 'lat' | 'lon'>): Float64Array {
  const headings = new Float64Array(lat.length);
  let ahead = Number.NaN;
  for (let i = lat.length - 2; i >= 0; i--) {
    const [lat1, lon1] = [lat[i] as number, lon[i] as number];
    const [lat2, lon2] = [lat[i + 1] as number, lon[i + 1] as number];
    if (lat1 !== lat2 || lon1 !== lon2) ahead = bearingDeg(lat1, lon1, lat2, lon2);
    headings[i] = ahead;
  }
  // where nothing lies ahead, the drive has arrived
  let arrival = Number.NaN;
  for (let i = 0; i < headings.length; i++) {
    const isEnd = i === headings.length - 1;
    if (isEnd || Number.isNaN(headings[i])) headings[i] = arrival;
    else arrival = headings[i] as number;
  }
  return headings;
}
