import type { Turn } from '../../../report/turn.ts';
import type { Motion } from '../../motion/motion.ts';
import type { Point, Side } from '../../point.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Fixture, FixtureRole } from './fixture.ts';
import type { LessonId } from './lesson.ts';
import type { LessonSettings } from './settings.ts';

/** A box of the ground along its axes. */
export interface Extent {
  readonly from: Point;
  readonly to: Point;
}

/** Where a turn of a drive begins: between the side that the tail goes out over and the edge beside it. Metres. */
export interface StartGap {
  readonly gapM: number;
  readonly beside: FixtureRole;
}

/** One lesson ready to be shown: what stands there, how the vehicle moves, and which line its swing is read from. */
export interface Scene {
  readonly lesson: LessonId;
  readonly vehicle: SwingVehicle;
  readonly fixtures: readonly Fixture[];
  readonly motion: Motion;
  /** runs backwards: the nose swings, not the tail */
  readonly reversing: boolean;
  /** side of the vehicle whose corner goes out */
  readonly swingSide: Side;
  /** what it was built from: the settings, or a turn of a drive */
  readonly settings?: LessonSettings;
  readonly turn?: Turn;
  /** a turn of a drive at full lock, where the sweep that fits is another */
  readonly wheel?: 'full lock';
  /** a turn of a drive: the gap that it starts with */
  readonly starts?: StartGap;
  /** driven by hand: the motion is not the lesson's own */
  readonly steered?: true;
  /** everything worth seeing */
  readonly extent: Extent;
}
