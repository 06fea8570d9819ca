import { countByLevel, LEVEL_WORD, LEVELS } from '../../geo/report/level.ts';
import { counted } from '../../geo/units/text.ts';
import { missingOf, sayMissing } from '../shelf/missing.ts';
import { report } from '../state/check.ts';
import { settings } from '../state/kept.ts';
import { openedDrive, openedMap } from '../state/opened.ts';
import { mapsOnShelf } from '../state/shelf.ts';
import { shownFindings } from '../state/shown.ts';

/** Tells a screen reader what a check or a filter has changed: the count first. */
export function Announcer() {
  const shown = report.value;
  const map = openedMap.value;
  const drive = openedDrive.value;
  const missing = map && drive && missingOf(map, drive, mapsOnShelf.value);
  const counts = countByLevel(shown?.findings ?? []);
  const parts = LEVELS.filter((level) => counts[level] > 0).map(
    (level) => `${counts[level]} ${LEVEL_WORD[level].toLowerCase()}`,
  );
  return (
    <p class="unseen" role="status" data-testid="announcer">
      {shown &&
        `${counted(shown.findings.length, 'finding')}${parts.length > 0 ? `: ${parts.join(', ')}` : ''}. ${shownFindings.value.length} in the list.`}
      {shown && missing && ` ${sayMissing(missing, settings.value.units)}`}
    </p>
  );
}
