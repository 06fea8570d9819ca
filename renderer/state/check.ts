import { computed, signal } from '@preact/signals';
import type { DriveReport, Finding } from '../../geo/report/report.ts';

/** Local wall time, YYYY-MM-DDTHH:MM. */
export const leaveAt = signal<string | undefined>(undefined);
export const report = signal<DriveReport | undefined>(undefined);
export const findings = computed<readonly Finding[]>(() => report.value?.findings ?? []);
export const checking = signal(false);
/** Why the findings shown are not of the vehicle and time chosen. */
export const checkProblem = signal<string | undefined>(undefined);
