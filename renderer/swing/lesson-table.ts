import type { LessonId } from '../../geo/swing/lessons/scene.ts';

/** What each lesson is called on its button. */
export const LESSON_NAME: Readonly<Record<LessonId, string>> = {
  leave: 'Pulling away',
  'side-road': 'Into a side road',
  'mini-roundabout': 'Mini-roundabout',
  pitch: 'Into a pitch',
  reverse: 'Reversing',
  'drive-turn': 'A turn of the drive',
};
