import { computed, signal } from '@preact/signals';
import { LEVELS, type Level } from '../../geo/report/level.ts';
import type { Finding, Subject } from '../../geo/report/report.ts';
import { findings } from './check.ts';

/** Where the user is along the drive, metres: map, strip and rows share it. */
export const cursorM = signal(0);

/** The finding that is opened. */
export const selectedId = signal<string | undefined>(undefined);
export const selected = computed(() => findings.value.find(({ id }) => id === selectedId.value));

/** The finding under the pointer, be it on map, strip or row: it stands out on all three. */
export const hoveredId = signal<string | undefined>(undefined);
/**
 * What of the drive is level with a line across the rows, pixels below their upper edge, while they are scrolled.
 * `atM` is undefined for the drive's end.
 */
export const rowsLevel = signal<{ readonly atM: number | undefined; readonly fromTopPx: number } | undefined>(
  undefined,
);

export const shownLevels = signal<ReadonlySet<Level>>(new Set(LEVELS));
/** undefined: every subject */
export const shownSubject = signal<Subject | undefined>(undefined);
export const showFolded = signal(false);

/** The findings of the levels and the subject chosen, folded ones among them. */
export const matchingFindings = computed(() =>
  findings.value.filter(
    ({ level, subject }) =>
      shownLevels.value.has(level) && (shownSubject.value === undefined || subject === shownSubject.value),
  ),
);

/** Of little weight; what the firm noted itself stays in sight. */
export function isFoldedAway({ folded, note }: Finding): boolean {
  return folded === true && note === undefined;
}

/** What map, strip and rows show. */
export const shownFindings = computed(() =>
  matchingFindings.value.filter(
    (finding) => showFolded.value || !isFoldedAway(finding) || finding.id === selectedId.value,
  ),
);

export function showEveryFinding(): void {
  shownLevels.value = new Set(LEVELS);
  shownSubject.value = undefined;
}
