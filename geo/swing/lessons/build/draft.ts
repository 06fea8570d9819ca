import type { Pose } from '../../motion/motion.ts';
import type { Point, Side } from '../../point.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Fixture } from '../scene/fixture.ts';
import type { StartGap } from '../scene/scene.ts';
import type { LessonSettings } from '../scene/settings.ts';

/** One stretch with the wheel held still: the steering, left positive, and the way of the rear-axle centre. */
export interface Leg {
  readonly steerRad: number;
  readonly travelM: number;
}

/**
 * A lesson before it is driven, always drawn for a wheel that goes to the left first; the other hand is its mirror.
 * Roles of fixtures say no side, so that the mirror may keep them.
 */
export interface Draft {
  readonly fixtures: readonly Fixture[];
  readonly start: Pose;
  readonly legs: readonly Leg[];
  readonly swingSide: Side;
  readonly reversing?: true;
  /** what edge the tail's side starts beside, and how far from it */
  readonly starts?: StartGap;
  /** points that the picture should hold besides the vehicle */
  readonly see?: readonly Point[];
}

/** Draws a lesson for these settings. */
export type Drafter = (vehicle: SwingVehicle, settings: LessonSettings) => Draft;
