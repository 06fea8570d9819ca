import type { Turn } from '../../report/turn.ts';
import type { Motion, Pose } from '../motion/motion.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';

/** On the ground, metres; x along the first straight, y to the left of it. */
export interface Point {
  readonly xM: number;
  readonly yM: number;
}

export const LESSONS = [
  /** pulling away from a kerb, wall or parked car alongside with the wheel turned away from it */
  'leave',
  /** turning from a main road into a side road */
  'side-road',
  /** once round a mini-roundabout to the far exit */
  'mini-roundabout',
  /** turning off the lane into a pitch between hedges */
  'pitch',
  /** reversing with the nose swinging out */
  'reverse',
  /** a turn taken from a checked drive, with its own angle and widths */
  'drive-turn',
] as const;
export type LessonId = (typeof LESSONS)[number];

/** Something beside the vehicle: a line to keep to, or a thing that is hit. */
export interface Fixture {
  readonly kind:
    | 'kerb'
    | 'wall'
    | 'hedge'
    | 'parked car'
    | 'post'
    | 'island'
    | 'lane line'
    | 'edge line'
    | 'pitch';
  /** as it is called in a sentence: "the kerb on the left" */
  readonly name: string;
  /** ends where it began: an outline with an inside */
  readonly closed: boolean;
  readonly line: readonly Point[];
  /** touching it is a contact; crossing a painted line is not. A kerb is run over by wheels and overhung by the body. */
  readonly hard: boolean;
}

/** What the trainer can set. Metres; undefined where a lesson does not use it. */
export interface LessonSettings {
  readonly driveSide: 'left' | 'right';
  /** to which side the wheel goes first, where the lesson lets choose */
  readonly turnSide: 'left' | 'right';
  /** between the body side and what stands beside it */
  readonly gapM: number;
  /** 0…1 of full lock */
  readonly lockShare: number;
  /** pulled straight ahead before steering */
  readonly straightM: number;
  readonly beside: 'kerb' | 'wall' | 'parked car';
  /** one lane of the road, or the whole lane between hedges */
  readonly laneM: number;
  /** of the corner turned round */
  readonly kerbRadiusM: number;
  /** between the posts of a pitch */
  readonly openingM: number;
}

/** One lesson ready to be shown: what stands there, how the vehicle moves, and which line its swing is read from. */
export interface Scene {
  readonly lesson: LessonId;
  readonly title: string;
  /** the one thing to learn */
  readonly learn: string;
  readonly vehicle: SwingVehicle;
  readonly fixtures: readonly Fixture[];
  readonly motion: Motion;
  /** runs backwards: the nose swings, not the tail */
  readonly reversing: boolean;
  /** side of the vehicle whose corner goes out */
  readonly swingSide: 'left' | 'right';
  /** what it was built from: the settings, or a turn of a drive */
  readonly settings?: LessonSettings;
  readonly turn?: Turn;
  /** driven by hand: the motion is not the lesson's own */
  readonly steered?: true;
  /** the box of everything worth seeing */
  readonly extent: { readonly from: Point; readonly to: Point };
}

/** What is read off a scene at one sample. Metres, radians. */
export interface Reading {
  /** tail (or nose, reversing) beyond the body's line when the wheel was last straight, now and at most so far */
  readonly swingM: number;
  readonly swingMostM: number;
  /** the side that goes out now */
  readonly swingSide: 'left' | 'right';
  /** the inner rear wheel inside the front wheel's track, now */
  readonly cutInM: number;
  readonly steerRad: number;
  readonly headingChangeRad: number;
  /** least distance from the body to anything hard, now; negative is inside it */
  readonly nearestM: number;
  readonly nearestTo?: string;
}

/** The first touch. */
export interface Contact {
  /** the first sample at or past the touch */
  readonly index: number;
  /** the exact pose of the touch, between the samples */
  readonly pose: Pose;
  readonly travelM: number;
  /** where on the ground */
  readonly at: Point;
  readonly fixture: string;
  /** which part of the vehicle: "right rear corner", "rack" … */
  readonly part: string;
}
