import { report, shownFindings } from '../state/state.ts';
import { countByLevel } from '../state/ui.ts';
import { LEVEL_ORDER, LEVEL_WORD } from './words.ts';

/** Tells a screen reader what a check or a filter has changed: the count first. */
export function Announcer() {
  const shown = report.value;
  const parts = LEVEL_ORDER.filter((level) => countByLevel.value[level] > 0).map(
    (level) => `${countByLevel.value[level]} ${LEVEL_WORD[level].toLowerCase()}`,
  );
  return (
    <p class="unseen" role="status" data-testid="announcer">
      {shown &&
        `${shown.findings.length} ${shown.findings.length === 1 ? 'finding' : 'findings'}${parts.length > 0 ? `: ${parts.join(', ')}` : ''}. ${shownFindings.value.length} in the list.`}
    </p>
  );
}
