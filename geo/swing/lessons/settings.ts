import type { SwingVehicle } from '../swing-vehicle.ts';
import type { LessonId, LessonSettings } from './scene.ts';

const PLAIN: LessonSettings = {
  driveSide: 'left',
  turnSide: 'right',
  gapM: 0.3,
  lockShare: 1,
  straightM: 0,
  beside: 'wall',
  laneM: 3.25,
  kerbRadiusM: 6,
  openingM: 7,
};

const SIDE_ROAD: LessonSettings = { ...PLAIN, turnSide: 'left', gapM: 0.5, lockShare: 0.8, beside: 'kerb' };

/** What each lesson begins with. Widths and radii are common ones, defaults of no particular place. */
export const DEFAULTS: Readonly<Record<LessonId, LessonSettings>> = {
  leave: PLAIN,
  'side-road': SIDE_ROAD,
  'mini-roundabout': { ...PLAIN, gapM: 0.5, lockShare: 0.9, beside: 'kerb' },
  pitch: { ...PLAIN, turnSide: 'left', laneM: 3.5, gapM: 0.4 },
  reverse: { ...PLAIN, turnSide: 'left', gapM: 0.8, beside: 'parked car' },
  'drive-turn': SIDE_ROAD,
};

/** The settings that change anything in a lesson, in the order to show them. */
export const USES: Readonly<Record<LessonId, readonly (keyof LessonSettings)[]>> = {
  leave: ['beside', 'turnSide', 'gapM', 'lockShare', 'straightM'],
  'side-road': ['driveSide', 'turnSide', 'laneM', 'kerbRadiusM', 'gapM', 'lockShare', 'straightM'],
  'mini-roundabout': ['driveSide', 'laneM', 'gapM', 'lockShare'],
  pitch: ['turnSide', 'laneM', 'openingM', 'gapM', 'lockShare', 'straightM'],
  reverse: ['turnSide', 'gapM', 'lockShare', 'straightM'],
  'drive-turn': [],
};

/** Ends and step of a slider. */
export interface Range {
  readonly from: number;
  readonly to: number;
  readonly step: number;
}
type Slid = {
  [K in keyof LessonSettings]: LessonSettings[K] extends number ? K : never;
}[keyof LessonSettings];

/** The range that each slider of a lesson runs over with this vehicle. Metres; shares of full lock. */
export function rangesOf(lesson: LessonId, vehicle: SwingVehicle): Readonly<Record<Slid, Range>> {
  const lengthM = vehicle.wheelbaseM + vehicle.frontOverhangM + vehicle.rearOverhangM;
  const reversing = lesson === 'reverse';
  const roadM = Math.ceil((vehicle.widthM + 0.4) * 10) / 10;
  return {
    gapM: { from: 0, to: reversing ? 2.5 : 1.2, step: 0.01 },
    // gentler, and a turn at right angles would begin far outside the picture
    lockShare: { from: lesson === 'leave' ? 0.1 : 0.3, to: 1, step: 0.05 },
    straightM: { from: 0, to: reversing ? Math.ceil(lengthM) : Math.ceil(lengthM / 2), step: 0.1 },
    laneM: { from: roadM, to: Math.max(roadM, lesson === 'pitch' ? 6 : 4), step: 0.05 },
    kerbRadiusM: { from: 0.5, to: 12, step: 0.5 },
    openingM: { from: roadM, to: 12, step: 0.1 },
  };
}

/** The one thing to learn from each. */
export const LEARN: Readonly<Record<LessonId, string>> = {
  leave: 'The tail goes out to the side away from the steering before the vehicle has moved its own length.',
  'side-road': 'Steering harder keeps the nose in its lane and sends the tail into the next one.',
  'mini-roundabout': 'Each time the wheel goes over, the tail swings out on the other side.',
  pitch: 'A narrow lane asks for a wide gateway: the nose needs the room in front, the tail the room behind.',
  reverse: 'In reverse the nose swings, and it swings far more than the tail.',
  'drive-turn': 'The tail needs room on the outside of the turn where the turn begins, not where it ends.',
};
