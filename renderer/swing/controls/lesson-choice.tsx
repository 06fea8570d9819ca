import { LESSONS, type LessonId } from '../../../geo/swing/lessons/scene/lesson.ts';
import { LESSON_NAME } from '../../../geo/swing/lessons/tell/names.ts';
import { choose, driveTurns, goToYard, inYard, lesson, pick, picked } from '../state/lesson.ts';

/** The lessons side by side; the turns of the drive only where there are any. */
export function LessonChoice() {
  const turns = driveTurns.value;
  const offered = LESSONS.filter((id) => id !== 'drive-turn' || turns.length > 0 || picked.value);
  const chooseLesson = (id: LessonId) => {
    const first = turns.find(({ folded }) => !folded) ?? turns[0];
    if (id === 'drive-turn' && !picked.peek() && first) pick(first);
    else choose(id);
  };
  return (
    <fieldset class="lesson-choice bare">
      <legend class="unseen">Lesson</legend>
      {offered.map((id) => (
        <button
          key={id}
          type="button"
          aria-pressed={!inYard.value && lesson.value === id}
          onClick={() => chooseLesson(id)}
        >
          {LESSON_NAME[id]}
        </button>
      ))}
      <button type="button" class="to-yard" aria-pressed={inYard.value} onClick={goToYard}>
        Measure in the yard
      </button>
    </fieldset>
  );
}
