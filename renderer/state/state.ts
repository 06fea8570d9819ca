import { computed, signal } from '@preact/signals';
import type { DriveReport, Finding, Level, Subject } from '../../geo/report/report.ts';
import { DEFAULT_SETTINGS } from '../../main/contract/default-settings.ts';
import type { Description } from '../../main/contract/description.ts';
import type { FleetVehicle } from '../../main/contract/fleet.ts';
import type { FollowedDrive } from '../../main/contract/followed-drive.ts';
import type { MapSummary } from '../../main/contract/map-summary.ts';
import type { Settings } from '../../main/contract/settings.ts';
import type { Source } from '../../main/contract/source.ts';

/** What the window knows. Components read these; only state/ writes what comes from the host. */
export const description = signal<Description | undefined>(undefined);
export const settings = signal<Settings>(DEFAULT_SETTINGS);
export const vehicles = signal<readonly FleetVehicle[]>([]);
export const vehicleId = signal<string | undefined>(undefined);
export interface OpenedMap {
  readonly summary: MapSummary;
  readonly source: Source;
  /** only what lies about this drive was kept of it */
  readonly about?: Source;
}
export const openedMap = signal<OpenedMap | undefined>(undefined);
export interface OpenedDrive {
  readonly followed: FollowedDrive;
  readonly source: Source;
}
export const openedDrive = signal<OpenedDrive | undefined>(undefined);
export const report = signal<DriveReport | undefined>(undefined);
/** local wall time, YYYY-MM-DDTHH:MM */
export const leaveAt = signal<string | undefined>(undefined);

/** Long work under way: what, how far, and how to stop it. */
export const work = signal<{ readonly what: string; readonly share?: number; stop(): void } | undefined>(
  undefined,
);
/** Something went wrong or should be known; stays until put away. */
export const message = signal<{ readonly kind: 'error' | 'notice'; readonly say: string } | undefined>(
  undefined,
);

/** Where the user is along the drive, metres: map, strip and rows share it. */
export const cursorM = signal(0);
export const selectedId = signal<string | undefined>(undefined);
export const shownLevels = signal<ReadonlySet<Level>>(new Set(['barred', 'tight', 'unknown', 'care']));
/** undefined: every subject */
export const shownSubject = signal<Subject | undefined>(undefined);
export const showFolded = signal(false);

export const vehicle = computed(
  () => vehicles.value.find(({ id }) => id === vehicleId.value) ?? vehicles.value[0],
);
export const findings = computed<readonly Finding[]>(() => report.value?.findings ?? []);
export const shownFindings = computed(() =>
  findings.value.filter(
    (finding) =>
      shownLevels.value.has(finding.level) &&
      (shownSubject.value === undefined || finding.subject === shownSubject.value) &&
      (showFolded.value || !finding.folded || finding.id === selectedId.value),
  ),
);
export const selected = computed(() => findings.value.find(({ id }) => id === selectedId.value));
