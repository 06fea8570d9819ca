import { STANDING_CAUTION } from '../../geo/report/standing-caution.ts';
import { clip } from '../../geo/units/text.ts';
import { report } from '../state/check.ts';
import { openedDrive } from '../state/opened.ts';
import { dialog } from '../state/page.ts';

/** So many notes stand under a drive; the others are one press away. */
const SHOWN = 2;

/** What the files and the clock had to say about themselves: two lines, the rest folded, the rules on their page. */
export function Notes() {
  const shown = report.value;
  if (!shown) return null;
  // the standing caution is beside the verdict
  const notes = [
    ...new Set([
      ...shown.cautions.filter((caution) => caution !== STANDING_CAUTION),
      ...(openedDrive.value?.followed.notes ?? []),
      ...(shown.timetable?.notes ?? []),
    ]),
  ];
  const more = notes.slice(SHOWN);
  return (
    <section class="notes small soft" aria-label="Notes">
      {notes.slice(0, SHOWN).map((note) => (
        <Note key={note} note={note} />
      ))}
      {more.length > 0 && (
        <details>
          <summary>More notes ({more.length})</summary>
          {more.map((note) => (
            <Note key={note} note={note} />
          ))}
        </details>
      )}
      <p>
        <button
          type="button"
          class="quiet"
          onClick={() => {
            dialog.value = 'notes';
          }}
        >
          Local notes…
        </button>
      </p>
      {(shown.rules ?? []).length > 0 && (
        <p>
          <button
            type="button"
            class="quiet"
            onClick={() => {
              dialog.value = 'rules';
            }}
          >
            About these rules
          </button>
        </p>
      )}
    </section>
  );
}

function Note({ note }: { note: string }) {
  return (
    <p>
      <bdi>{clip(note, 600)}</bdi>
    </p>
  );
}
