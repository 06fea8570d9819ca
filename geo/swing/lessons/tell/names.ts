import { sayTurnDeg } from '../../../report/say-turn-figures.ts';
import type { Turn } from '../../../report/turn.ts';
import type { LessonId } from '../scene/lesson.ts';
import type { Scene } from '../scene/scene.ts';

/** What each lesson is called on its button. */
export const LESSON_NAME: Readonly<Record<LessonId, string>> = {
  leave: 'Pulling away',
  'side-road': 'Into a side road',
  'mini-roundabout': 'Mini-roundabout',
  pitch: 'Into a pitch',
  reverse: 'Reversing',
  'drive-turn': 'A turn of the drive',
};

/** The one thing to learn from each. */
export const LEARN: Readonly<Record<LessonId, string>> = {
  leave: 'The tail goes out to the side away from the steering before the vehicle has moved its own length.',
  'side-road': 'Steering harder keeps the nose in its lane and sends the tail into the next one.',
  'mini-roundabout': 'Each time the wheel goes over, the tail swings out on the other side.',
  pitch: 'A narrow lane asks for a wide gateway: the nose needs the room in front, the tail the room behind.',
  reverse: 'In reverse the nose swings, and it swings far more than the tail.',
  'drive-turn': 'The tail needs room on the outside of the turn where the turn begins, not where it ends.',
};

const TURN_NAME: Readonly<Record<Turn['kind'], string>> = {
  junction: 'Junction',
  bend: 'Bend',
  roundabout: 'Roundabout',
  'mini-roundabout': 'Mini-roundabout',
  'u-turn': 'Turning back',
};

/** The heading of a lesson. */
export function titleOf({ lesson, settings, turn }: Scene): string {
  if (turn) return `${TURN_NAME[turn.kind]}, ${sayTurnDeg(turn)} to the ${turn.side}`;
  switch (lesson) {
    case 'leave':
      return settings ? `Pulling away from a ${settings.beside}` : LESSON_NAME.leave;
    case 'side-road':
    // no turn of a drive is picked yet
    case 'drive-turn':
      return 'Turning into a side road';
    case 'mini-roundabout':
      return 'Across a mini-roundabout';
    case 'pitch':
      return 'Into a pitch off a narrow lane';
    case 'reverse':
      return 'Backing out beside a parked car';
  }
}
