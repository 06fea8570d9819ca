import type { Pose } from '../motion/motion.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import type { Fixture, LessonSettings, Point } from './scene.ts';
import type { Leg } from './scenes/legs.ts';

/**
 * A lesson before it is driven, always drawn for a wheel that goes to the left first; the other hand is its mirror.
 * Names of fixtures say no side, so that the mirror may keep them.
 */
export interface Draft {
  readonly title: string;
  readonly fixtures: readonly Fixture[];
  readonly start: Pose;
  readonly legs: readonly Leg[];
  readonly swingSide: 'left' | 'right';
  readonly reversing?: true;
  /** points that the picture should hold besides the vehicle */
  readonly see?: readonly Point[];
}

/** Draws a lesson for these settings; `nearside` when the wheel goes first to the side of the kerb one drives along. */
export type Drafter = (vehicle: SwingVehicle, settings: LessonSettings, nearside: boolean) => Draft;
