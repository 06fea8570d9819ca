import { mix, shareOf } from '../../earth/between.ts';
import { leastWhere } from '../../earth/bisect.ts';
import { lastOrZero } from '../../lists.ts';
import type { Motion, Pose } from './motion.ts';

/** The vehicle at one moment: between two samples, so that it glides whatever their spacing. */
export interface Frame {
  readonly pose: Pose;
  readonly steerRad: number;
  /** the last sample at or before it */
  readonly index: number;
}

/** Travel from the first to the last sample, metres. */
export function lengthOf(motion: Motion): number {
  return lastOrZero(motion.travelM);
}

/** The last sample at or before a travel. */
function sampleAt(motion: Motion, travelM: number): number {
  const last = motion.travelM.length - 1;
  return leastWhere(0, last, (i) => !(motion.travelM[i + 1]! <= travelM + 1e-9));
}

/** The moment at a travel; before the first and past the last sample, those. */
export function frameAt(motion: Motion, travelM: number): Frame {
  const index = sampleAt(motion, travelM);
  const next = Math.min(index + 1, motion.travelM.length - 1);
  const share = shareOf(travelM, motion.travelM[index]!, motion.travelM[next]!);
  const between = (values: Float64Array): number => mix(values[index]!, values[next]!, share);
  return {
    pose: { xM: between(motion.xM), yM: between(motion.yM), headingRad: between(motion.headingRad) },
    steerRad: between(motion.steerRad),
    index,
  };
}
