import { wrapRad } from '../../geo/earth/angles.ts';
import { fail, ok, type Result } from '../../geo/result.ts';
import type { GuidePath, PathPiece } from '../../geo/swing/motion/guide-path.ts';
import type { Pose } from '../../geo/swing/motion/motion.ts';

/** A path, and where it lies on the ground. */
export interface FilletedPath {
  readonly start: Pose;
  readonly path: GuidePath;
}

/** A bend this slight is no bend, radians; a straight this short is none, metres. */
const STRAIGHT_ON_RAD = 1e-9;
const NOTHING_M = 1e-9;

/**
 * Rounds the corners of a line with arcs that touch both its legs.
 * @param points at least two, metres, x to the right and y up
 * @param radiiM one for each point between the ends
 * @returns a problem naming the corner where an arc does not fit its legs, or where the line turns straight back
 */
export function filletPath(
  points: readonly { readonly xM: number; readonly yM: number }[],
  radiiM: readonly number[],
): Result<FilletedPath> {
  const first = points[0];
  if (!first || points.length < 2) return fail('fillet', 'A path needs at least two points.');
  if (radiiM.length !== points.length - 2)
    return fail('fillet', `${points.length - 2} corners need as many radii; there are ${radiiM.length}.`);
  const legs = points.slice(1).map(({ xM, yM }, index) => {
    const from = points[index] as { xM: number; yM: number };
    return {
      lengthM: Math.hypot(xM - from.xM, yM - from.yM),
      headingRad: Math.atan2(yM - from.yM, xM - from.xM),
    };
  });
  const none = legs.findIndex(({ lengthM }) => !(lengthM > NOTHING_M) || !Number.isFinite(lengthM));
  if (none >= 0) return fail('fillet', `Points ${none + 1} and ${none + 2} are the same, or not numbers.`);

  const pieces: PathPiece[] = [];
  let usedM = 0;
  for (const [index, leg] of legs.entries()) {
    const next = legs[index + 1];
    const turnRad = next ? wrapRad(next.headingRad - leg.headingRad) : 0;
    const radiusM = radiiM[index] ?? 0;
    const bends = Math.abs(turnRad) > STRAIGHT_ON_RAD;
    if (bends && !(radiusM > 0 && Number.isFinite(radiusM)))
      return fail('fillet', `The radius at point ${index + 2} must be above 0 m.`);
    if (Math.abs(turnRad) > Math.PI - 1e-6)
      return fail('fillet', `At point ${index + 2} the line turns straight back; no arc can round that.`);
    const tangentM = bends ? radiusM * Math.tan(Math.abs(turnRad) / 2) : 0;
    const straightM = leg.lengthM - usedM - tangentM;
    // points rounded to a micrometre may leave the last arc that much short
    if (straightM < -1e-5)
      return fail(
        'fillet',
        `The leg from point ${index + 1} to point ${index + 2} is ${(-straightM).toFixed(2)} m too short for the arcs at its ends.`,
      );
    if (straightM > 1e-5) pieces.push({ kind: 'line', lengthM: straightM });
    if (bends) pieces.push({ kind: 'arc', radiusM, turnRad });
    usedM = tangentM;
  }
  return ok({
    start: { xM: first.xM, yM: first.yM, headingRad: legs[0]?.headingRad ?? 0 },
    path: { pieces },
  });
}
