import type { Motion, Pose } from '../../geo/swing/motion/motion.ts';

/** The vehicle at one moment: between two samples, so that it glides whatever their spacing. */
export interface Frame {
  readonly pose: Pose;
  readonly steerRad: number;
  /** the last sample at or before it */
  readonly index: number;
}

/** Travel from the first to the last sample, metres. */
export function lengthOf(motion: Motion): number {
  return motion.travelM.at(-1) ?? 0;
}

/** The last sample at or before a travel. */
export function sampleAt(motion: Motion, travelM: number): number {
  let [low, high] = [0, motion.travelM.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (motion.travelM[middle]! <= travelM + 1e-9) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The moment at a travel; before the first and past the last sample, those. */
export function frameAt(motion: Motion, travelM: number): Frame {
  const index = sampleAt(motion, travelM);
  const next = Math.min(index + 1, motion.travelM.length - 1);
  const from = motion.travelM[index]!;
  const gap = motion.travelM[next]! - from;
  const share = gap > 0 ? Math.min(1, Math.max(0, (travelM - from) / gap)) : 0;
  const between = (values: Float64Array): number => values[index]! + share * (values[next]! - values[index]!);
  return {
    pose: { xM: between(motion.xM), yM: between(motion.yM), headingRad: between(motion.headingRad) },
    steerRad: between(motion.steerRad),
    index,
  };
}
