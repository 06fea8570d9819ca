import { noseOf, tailPointsOf } from '../outline.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import { type Motion, onGround, poseAt } from './motion.ts';

/** Where a point of the vehicle ran, sample by sample. */
export interface Trace {
  readonly xM: Float64Array;
  readonly yM: Float64Array;
}

/** The trace of a point given in metres ahead of the rear axle and to the left. */
export function traceOf(motion: Motion, aheadM: number, leftM: number): Trace {
  const count = motion.travelM.length;
  const trace = { xM: new Float64Array(count), yM: new Float64Array(count) };
  for (let index = 0; index < count; index++) {
    const { xM, yM } = onGround(poseAt(motion, index), aheadM, leftM);
    trace.xM[index] = xM;
    trace.yM[index] = yM;
  }
  return trace;
}

/** The three traces that explain a turn. `turn` is the side the wheel lies on. */
export function turnTraces(
  vehicle: SwingVehicle,
  motion: Motion,
  turn: 'left' | 'right',
): { readonly outerRearCorner: Trace; readonly innerRearWheel: Trace; readonly outerFrontCorner: Trace } {
  const outside = turn === 'left' ? -1 : 1;
  const tails = tailPointsOf(vehicle);
  const tail = tails[tails.length - 1] ?? { aheadM: 0, halfWidthM: vehicle.widthM / 2 };
  const nose = noseOf(vehicle);
  return {
    outerRearCorner: traceOf(motion, tail.aheadM, outside * tail.halfWidthM),
    innerRearWheel: traceOf(motion, 0, (-outside * vehicle.trackM) / 2),
    outerFrontCorner: traceOf(motion, nose.aheadM, outside * nose.halfWidthM),
  };
}

/** The same motion run the other way: the last sample first. */
export function runBackwards(motion: Motion): Motion {
  const end = motion.travelM[motion.travelM.length - 1] ?? 0;
  return {
    travelM: motion.travelM.map((travel) => end - travel).reverse(),
    xM: motion.xM.slice().reverse(),
    yM: motion.yM.slice().reverse(),
    headingRad: motion.headingRad.slice().reverse(),
    steerRad: motion.steerRad.slice().reverse(),
  };
}
