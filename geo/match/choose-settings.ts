import type { Roads } from '../roads/roads.ts';
import { cumulativeM } from '../route/measure.ts';
import type { Route, RouteSegment } from '../route/route.ts';
import { type MatchSettings, plannedTrack, recordedTrack, sparseRoute } from './settings.ts';

/** A drawn track whose positions lie this close to roads was drawn on the same map. */
const SAME_MAP_M = 1;
const SAME_MAP_SIGMA_M = 5;
/** Two maps of one road differ by so much. */
const OTHER_MAP_SIGMA_M = 10;
/** A receiver's noise as far as a match can still tell roads apart. Metres. */
const LEAST_SIGMA_M = 4;
const MOST_SIGMA_M = 15;
const SAMPLES = 400;
const LOOK_M = 50;

/**
 * Chooses the model by evidence: a route of points far apart, a track with times (recorded), or a drawn one.
 * A recording's noise is estimated as 1.4826 times the median distance from the nearest road (Newson & Krumm 2009,
 * section 4.1).
 */
export function chooseSettings(kind: Route['kind'], segment: RouteSegment, roads: Roads): MatchSettings {
  const meanM = (cumulativeM(segment).at(-1) ?? 0) / Math.max(1, segment.lat.length - 1);
  const planned = plannedTrack(OTHER_MAP_SIGMA_M);
  if (kind === 'route' && meanM > planned.sparseM / 2) return sparseRoute();
  const medianM = medianDistanceM(segment, roads);
  if (!isRecorded(segment)) return medianM < SAME_MAP_M ? plannedTrack(SAME_MAP_SIGMA_M) : planned;
  return recordedTrack(Math.min(MOST_SIGMA_M, Math.max(LEAST_SIGMA_M, 1.4826 * medianM)));
}

/** Most positions have a time, and time goes on. */
function isRecorded(segment: RouteSegment): boolean {
  const times = segment.timeMs.filter((time) => !Number.isNaN(time));
  const first = times[0];
  const last = times.at(-1);
  return (
    first !== undefined && last !== undefined && last > first && times.length > segment.timeMs.length / 2
  );
}

function medianDistanceM(segment: RouteSegment, roads: Roads): number {
  const stride = Math.max(1, Math.floor(segment.lat.length / SAMPLES));
  const distances: number[] = [];
  for (let i = 0; i < segment.lat.length; i += stride) {
    const near = roads.index.near(segment.lat[i] as number, segment.lon[i] as number, LOOK_M);
    if (near.length > 0) distances.push(Math.min(...near.map((segmentNear) => segmentNear.distanceM)));
  }
  distances.sort((a, b) => a - b);
  return distances[distances.length >> 1] ?? 0;
}
