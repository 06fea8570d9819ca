import { wrapLon } from '../../earth/angles.ts';
import { distanceM } from '../../earth/sphere.ts';
import { lastOrZero, smallest } from '../../lists.ts';
import type { Roads } from '../../roads/roads.ts';
import type { Route, RouteSegment } from '../gpx/route.ts';
import { cumulativeM } from '../gpx/route-length.ts';
import {
  type MatchSettings,
  plannedTrack,
  recordedTrack,
  sameMapTrack,
  sparseRoute,
} from './match-settings.ts';

/** A receiver's noise as far as a match can still tell roads apart. Metres. */
const LEAST_NOISE_M = 4;
const MOST_NOISE_M = 15;
/** A drawn track whose positions lie this close to roads was drawn on the same map. */
const SAME_MAP_M = 1;
/** Two maps of one road differ by so much, or more where the positions say so. */
const OTHER_MAP_SIGMA_M = 10;
const SAMPLES = 200;
const LOOK_M = 50;
/** Positions closer than this on average are a line, whatever the file calls them. */
const LINE_M = 100;
/** A line drawn along roads runs beside them for at least this share, pieces missing from the map apart. */
const BESIDE_SHARE = 0.7;
const BESIDE_M = 20;
/** So often along a line it is looked whether a road runs there, within reason. */
const BESIDE_EVERY_M = 40;
const BESIDE_LOOKS = { least: 4, most: 40 };

/**
 * Chooses the model by evidence: points far apart that only name places, a recording (it has times), or a drawn line.
 * Noise is estimated as 1.4826 times the median distance from the nearest road (Newson & Krumm 2009, section 4.1).
 */
export function chooseSettings(kind: Route['kind'], segment: RouteSegment, roads: Roads): MatchSettings {
  const noiseM = 1.4826 * medianDistanceM(segment, roads);
  if (kind === 'track' && isRecorded(segment))
    return recordedTrack(Math.min(MOST_NOISE_M, Math.max(LEAST_NOISE_M, noiseM)));
  const meanM = lastOrZero(cumulativeM(segment)) / Math.max(1, segment.lat.length - 1);
  if (meanM > LINE_M && besideRoads(segment, roads) < BESIDE_SHARE) return sparseRoute(1.5 * noiseM);
  if (noiseM < SAME_MAP_M) return sameMapTrack();
  return plannedTrack(Math.min(MOST_NOISE_M, Math.max(OTHER_MAP_SIGMA_M, 1.5 * noiseM)));
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
    const near = roads.index.near(segment.lat[i]!, segment.lon[i]!, LOOK_M);
    if (near.length > 0) distances.push(smallest(near.map((found) => found.distanceM)));
  }
  distances.sort((a, b) => a - b);
  return distances[distances.length >> 1] ?? 0;
}

/** Which share of the way between positions, taken straight, is lines that run beside roads from end to end. */
function besideRoads({ lat, lon }: RouteSegment, roads: Roads): number {
  const stride = Math.max(1, Math.floor(lat.length / SAMPLES));
  let beside = 0;
  let all = 0;
  for (let i = 1; i < lat.length; i += stride) {
    const from = { lat: lat[i - 1]!, lon: lon[i - 1]! };
    const to = { lat: lat[i]!, lon: lon[i]! };
    const lengthM = distanceM(from.lat, from.lon, to.lat, to.lon);
    const looks = Math.min(BESIDE_LOOKS.most, Math.max(BESIDE_LOOKS.least, lengthM / BESIDE_EVERY_M));
    const steps = Math.floor(looks) + 1;
    const runsBeside = Array.from({ length: steps - 1 }, (_, k) => (k + 1) / steps).every((t) => {
      const onLat = from.lat + t * (to.lat - from.lat);
      const onLon = from.lon + t * wrapLon(to.lon - from.lon);
      return roads.index.near(onLat, onLon, BESIDE_M).length > 0;
    });
    all += lengthM;
    if (runsBeside) beside += lengthM;
  }
  return all > 0 ? beside / all : 1;
}
