import { STANDING_CAUTION } from '../../geo/report/standing-caution.ts';
import { clip } from '../../geo/units/text.ts';
import { report } from '../state/check.ts';
import { openedDrive } from '../state/opened.ts';

/** What the files and the clock had to say about themselves, and the country rules that the check used. */
export function Notes() {
  const shown = report.value;
  if (!shown) return null;
  // the standing caution is beside the verdict
  const notes = new Set([
    ...shown.cautions.filter((caution) => caution !== STANDING_CAUTION),
    ...(openedDrive.value?.followed.notes ?? []),
    ...(shown.timetable?.notes ?? []),
  ]);
  const rules = shown.rules ?? [];
  if (notes.size === 0 && rules.length === 0) return null;
  return (
    <section class="notes small soft" aria-label="Notes">
      {[...notes].map((note) => (
        <p key={note}>
          <bdi>{clip(note, 600)}</bdi>
        </p>
      ))}
      {rules.map(({ country, about, says, source }) => (
        <p key={`${country}${about}${says}`}>
          {country ?? 'Country not known'}, {about}: {says} ({source})
        </p>
      ))}
    </section>
  );
}
