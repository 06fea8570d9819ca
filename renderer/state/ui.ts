import { computed, signal } from '@preact/signals';
import { given } from '../../geo/given.ts';
import type { Finding, Level, Subject } from '../../geo/report/report.ts';
import { findings, openedDrive } from './state.ts';

export type DialogName = 'open' | 'vehicles' | 'settings' | 'help';

/** The one dialog that is open. */
export const dialog = signal<DialogName | undefined>(undefined);
/** A file is held over the window. */
export const dropping = signal(false);
/** Why the findings shown are not of the vehicle and time chosen. */
export const checkProblem = signal<string | undefined>(undefined);
export const checking = signal(false);
/** The program behind the window has gone. */
export const hostGone = signal<string | undefined>(undefined);

/** How many findings each level has, folded ones too. */
export const countByLevel = computed(() => {
  const counts: Record<Level, number> = { barred: 0, tight: 0, unknown: 0, care: 0 };
  for (const { level } of findings.value) counts[level]++;
  return counts;
});

/** Subjects that have findings, in the order they are met. */
export const subjectsPresent = computed<readonly Subject[]>(() => [
  ...new Set(findings.value.map(({ subject }) => subject)),
]);

/** The drive has no mapped road under it, or next to none: the map is of another place. */
export const mapIsElsewhere = computed(() => {
  const drive = openedDrive.value?.followed;
  return drive !== undefined && drive.lengthM > 0 && drive.match.drivenM < 0.02 * drive.lengthM;
});

/** The next finding at or after a distance along the drive, and the one before. */
export function neighboursOf(
  finding: Finding,
  among: readonly Finding[],
): { readonly before?: Finding; readonly after?: Finding } {
  const at = among.findIndex(({ id }) => id === finding.id);
  const before = at > 0 ? among[at - 1] : undefined;
  const after = at >= 0 ? among[at + 1] : undefined;
  return { ...given({ before, after }) };
}
