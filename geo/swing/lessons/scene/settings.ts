import { otherSide, type Side } from '../../point.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { LessonId } from './lesson.ts';

/** What the trainer can set; a lesson uses those of `USES`. Metres. */
export interface LessonSettings {
  readonly driveSide: Side;
  /** to which side the wheel goes first, where the lesson lets choose */
  readonly turnSide: Side;
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

/** What a lesson begins with where one drives on that side: on the other side the same, seen in a mirror. */
export function defaultsOn(lesson: LessonId, driveSide: Side): LessonSettings {
  const usual = DEFAULTS[lesson];
  return driveSide === usual.driveSide ? usual : { ...usual, driveSide, turnSide: otherSide(usual.turnSide) };
}

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
/** The settings that are lengths or shares, set by a slider; the others are a choice among words. */
export type SlidSetting = {
  [K in keyof LessonSettings]: LessonSettings[K] extends number ? K : never;
}[keyof LessonSettings];
export type ChosenSetting = Exclude<keyof LessonSettings, SlidSetting>;

/** What there is to choose from. */
export const CHOICES: { readonly [K in ChosenSetting]: readonly LessonSettings[K][] } = {
  driveSide: ['left', 'right'],
  turnSide: ['left', 'right'],
  beside: ['kerb', 'wall', 'parked car'],
};

export function isChosen(setting: keyof LessonSettings): setting is ChosenSetting {
  return setting in CHOICES;
}

/** The range that each slider of a lesson runs over with this vehicle. Metres; shares of full lock. */
export function rangesOf(lesson: LessonId, vehicle: SwingVehicle): Readonly<Record<SlidSetting, Range>> {
  const lengthM = vehicle.wheelbaseM + vehicle.frontOverhangM + vehicle.rearOverhangM;
  const reversing = lesson === 'reverse';
  const roadM = Math.ceil((vehicle.widthM + 0.4) * 10) / 10;
  return {
    gapM: { from: 0, to: reversing ? 2.5 : 1.2, step: 0.01 },
    // gentler, and a turn at right angles would begin far outside the picture
    lockShare: { from: lesson === 'leave' ? 0.1 : 0.3, to: 1, step: 0.01 },
    straightM: { from: 0, to: reversing ? Math.ceil(lengthM) : Math.ceil(lengthM / 2), step: 0.1 },
    laneM: { from: roadM, to: Math.max(roadM, lesson === 'pitch' ? 6 : 4), step: 0.05 },
    kerbRadiusM: { from: 0.5, to: 12, step: 0.5 },
    openingM: { from: roadM, to: 12, step: 0.1 },
  };
}
