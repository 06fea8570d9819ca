import { toRad, turnDeg } from '../../earth/angles.ts';
import { bearingDeg } from '../../earth/sphere.ts';
import type { DriveTrace } from './trace.ts';

/** Sideways acceleration that crockery and passengers bear, m/s². Common practice, no source. */
const SIDEWAYS = 2;
/** A bend is measured on chords of at least this length, so that the mapper's dense points are no bends. */
const CHORD_M = 10;
/** No bend is drawn out over more than this before and after its corner. */
const TANGENT_M = 25;
/** Even a full turn is made at this speed, m/s. */
const LEAST_MPS = 1.4;

/**
 * Speed at which each position can be passed for its bend, m/s; Infinity on the straight.
 * Radius of the arc that rounds the corner with tangents t: r = t / tan(turn / 2); speed = √(a r).
 */
export function bendSpeeds(trace: DriveTrace): Float64Array {
  const { lat, lon, atM } = trace;
  const count = atM.length;
  const speeds = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  let back = 0;
  let ahead = 0;
  for (let i = 1; i < count - 1; i++) {
    const m = atM[i]!;
    while (back + 1 < i && m - atM[back + 1]! >= CHORD_M) back++;
    ahead = Math.max(ahead, i + 1);
    while (ahead < count - 1 && atM[ahead]! - m < CHORD_M) ahead++;
    const turn = turnDeg(
      bearingDeg(lat[back]!, lon[back]!, lat[i]!, lon[i]!),
      bearingDeg(lat[i]!, lon[i]!, lat[ahead]!, lon[ahead]!),
    );
    if (turn < 2) continue;
    const shorterM = Math.min(m - atM[back]!, atM[ahead]! - m);
    const radiusM = Math.min(shorterM / 2, TANGENT_M) / Math.tan(toRad(Math.min(turn, 179)) / 2);
    speeds[i] = Math.max(LEAST_MPS, Math.sqrt(SIDEWAYS * radiusM));
  }
  return speeds;
}
