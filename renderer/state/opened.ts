import { computed, signal } from '@preact/signals';
import type { FollowedDrive } from '../../main/contract/followed-drive.ts';
import type { MapSummary } from '../../main/contract/map-summary.ts';
import type { Source } from '../../main/contract/source.ts';
import { description, settings } from './kept.ts';

interface OpenedMap {
  readonly summary: MapSummary;
  readonly source: Source;
  /** only what lies about this drive was kept of it */
  readonly about?: Source;
}
export const openedMap = signal<OpenedMap | undefined>(undefined);

export interface OpenedDrive {
  readonly followed: FollowedDrive;
  readonly source: Source;
  /** the drive whose place it took by a change, by its driveId: what is looked at stays in view */
  readonly insteadOf?: string;
}
export const openedDrive = signal<OpenedDrive | undefined>(undefined);

/** Whether the map is the sample's invented district: no server knows its objects. */
export const mapIsInvented = computed(() => openedMap.value?.source.kind === 'sample');

/** What holds where the place does not tell: the user's choice, for the invented district its own. */
export const countryUsed = computed(
  () => settings.value.country ?? (mapIsInvented.value ? description.value?.sample.country : undefined),
);
