import { LEVEL_WORD, LEVELS, type Level, sayCount } from '../../geo/report/level.ts';
import type { Subject } from '../../geo/report/report.ts';
import { SUBJECT_WORD, subjectsOf } from '../../geo/report/subject-word.ts';
import { LevelMark } from '../look/level-mark.tsx';
import { findings, report } from '../state/check.ts';
import { shownLevels, shownSubject } from '../state/shown.ts';

/** Counts by level that show or hide that level, and the choice of one subject. */
export function Filters() {
  const subject = shownSubject.value;
  const subjects = subjectsOf(findings.value);
  // before the first answer there is nothing to count, and a nought would be taken for one
  const held = report.value?.findings;
  return (
    <fieldset class="filters">
      <legend class="unseen">Which findings are shown</legend>
      {LEVELS.map((level) => (
        <LevelToggle key={level} level={level} count={held && sayCount(held, level)} />
      ))}
      <label class="subject-choice">
        <span class="unseen">Subject</span>
        <select
          value={subject ?? ''}
          onChange={({ currentTarget }) => {
            shownSubject.value = subjects.find((each) => each === currentTarget.value);
          }}
        >
          <option value="">Every subject</option>
          {withChosen(subjects, subject).map((each) => (
            <option key={each} value={each}>
              {SUBJECT_WORD[each]}
            </option>
          ))}
        </select>
      </label>
    </fieldset>
  );
}

function LevelToggle({ level, count }: { level: Level; count: string | undefined }) {
  const on = shownLevels.value.has(level);
  return (
    <button
      type="button"
      class="level-toggle"
      aria-pressed={on}
      onClick={() => {
        const next = new Set(shownLevels.value);
        if (on) next.delete(level);
        else next.add(level);
        shownLevels.value = next;
      }}
    >
      <LevelMark level={level} size={16} />
      <span>{LEVEL_WORD[level]}</span>
      {count === undefined ? <span class="soft">checking…</span> : <b>{count}</b>}
    </button>
  );
}

/** Another vehicle may have no finding of the subject chosen: the choice stays readable. */
function withChosen(subjects: readonly Subject[], chosen: Subject | undefined): readonly Subject[] {
  return chosen === undefined || subjects.includes(chosen) ? subjects : [...subjects, chosen];
}
