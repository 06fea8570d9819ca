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
