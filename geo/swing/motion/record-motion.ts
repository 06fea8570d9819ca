import type { Motion, Pose } from './motion.ts';

/** The samples of a motion as they come. */
export interface Recorder {
  /** @param travelM of the guided point so far; @param steerRad single-track, left positive */
  add(pose: Pose, travelM: number, steerRad: number): void;
  /** all so far; more may be added afterwards */
  motion(): Motion;
}

/** Collects the samples of a motion. Plain numbers: a path may have some hundred thousand samples. */
export function recordMotion(): Recorder {
  const travels: number[] = [];
  const xs: number[] = [];
  const ys: number[] = [];
  const headings: number[] = [];
  const steers: number[] = [];
  return {
    add({ xM, yM, headingRad }, travelM, steerRad) {
      travels.push(travelM);
      xs.push(xM);
      ys.push(yM);
      headings.push(headingRad);
      steers.push(steerRad);
    },
    motion: () => ({
      travelM: Float64Array.from(travels),
      xM: Float64Array.from(xs),
      yM: Float64Array.from(ys),
      headingRad: Float64Array.from(headings),
      steerRad: Float64Array.from(steers),
    }),
  };
}
