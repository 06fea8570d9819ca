import { cumulativeM, wrapLon } from './measure.ts';
import type { RouteSegment } from './route.ts';

/** One position of a segment; `timeMs` is NaN unless both neighbours have a time. */
export interface Position {
  readonly lat: number;
  readonly lon: number;
  readonly timeMs: number;
}

/**
 * The position `atM` metres along a segment of at least one position; before its start the first, past its end the
 * last. Straight in degrees between two positions, which is right within millimetres for steps below a kilometre.
 *
 * @param along metres up to each position, from `cumulativeM`
 */
export function positionAt(segment: RouteSegment, along: Float64Array, atM: number): Position {
  const last = along.length - 1;
  if (!(atM > 0)) return between(segment, 0, 0);
  if (atM >= (along[last] as number)) return between(segment, last, 0);
  const i = firstBeyond(along, atM) - 1;
  const fromM = along[i] as number;
  return between(segment, i, (atM - fromM) / ((along[i + 1] as number) - fromM));
}

/**
 * The same line with a position every `stepM` metres or a little less, so that the steps are even; first and last stay.
 * Corners between two new positions are cut. A segment without length is returned as it is.
 */
export function resample(segment: RouteSegment, stepM: number): RouteSegment {
  const along = cumulativeM(segment);
  const lengthM = along.at(-1) ?? 0;
  if (lengthM === 0 || !(stepM > 0)) return segment;
  const steps = Math.ceil(lengthM / stepM);
  const lat = new Float64Array(steps + 1);
  const lon = new Float64Array(steps + 1);
  const timeMs = new Float64Array(steps + 1);
  for (let i = 0; i <= steps; i++) {
    const position = positionAt(segment, along, i === steps ? lengthM : (lengthM * i) / steps);
    lat[i] = position.lat;
    lon[i] = position.lon;
    timeMs[i] = position.timeMs;
  }
  return { lat, lon, timeMs };
}

/** Index of the first position lying beyond `atM`; there is one. */
function firstBeyond(along: Float64Array, atM: number): number {
  let low = 0;
  let high = along.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((along[middle] as number) > atM) high = middle;
    else low = middle + 1;
  }
  return low;
}

function between({ lat, lon, timeMs }: RouteSegment, i: number, share: number): Position {
  const [lat0, lon0, time0] = [lat[i] as number, lon[i] as number, timeMs[i] as number];
  if (share === 0) return { lat: lat0, lon: lon0, timeMs: time0 };
  return {
    lat: lat0 + share * ((lat[i + 1] as number) - lat0),
    lon: wrapLon(lon0 + share * wrapLon((lon[i + 1] as number) - lon0)),
    timeMs: time0 + share * ((timeMs[i + 1] as number) - time0),
  };
}
