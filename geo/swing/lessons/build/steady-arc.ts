import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Draft } from './draft.ts';
import { arcLeg, straightLeg } from './legs.ts';

/** The rear axle on one arc to the left. Metres, radians. */
export interface SteadyArc {
  readonly vehicle: SwingVehicle;
  readonly radiusM: number;
  readonly turnRad: number;
}

/** Roads are drawn this far. Metres. */
export const FAR_M = 40;
/** A lane narrower than its road by no more than this has no line of its own. Metres. */
export const LANE_LEAST_M = 0.1;

const BEFORE_M = 7;
const AFTER_M = 7;

/** Straight, one arc that begins at x = 0, straight; the outer body side on y = 0. */
export function arcFromOrigin({ vehicle, radiusM, turnRad }: SteadyArc): Pick<Draft, 'start' | 'legs'> {
  return {
    start: { xM: -BEFORE_M, yM: vehicle.widthM / 2, headingRad: 0 },
    legs: [straightLeg(BEFORE_M), arcLeg(vehicle, radiusM, turnRad), straightLeg(AFTER_M)],
  };
}
