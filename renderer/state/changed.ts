import { computed, signal } from '@preact/signals';
import type { Source } from '../../main/contract/source.ts';
import { type OpenedDrive, openedDrive } from './opened.ts';

/** A drive that a change made of another one, or was taken back to. */
export interface ChangedFrom {
  readonly drive: OpenedDrive;
  /** what the change did: `Past Mill Lane: 4 minutes more, 2.1 km longer` */
  readonly say: string;
}

/** The drives before the open one, the last on top, each with what was changed about it. */
export const changedFrom = signal<readonly ChangedFrom[]>([]);

/** Changes that were taken back, the last on top. */
export const undone = signal<readonly ChangedFrom[]>([]);

/** The files that this window made of changed and planned drives: the user has none of them yet. */
export const madeHere = signal<readonly Source[]>([]);

/** Whether the open drive is in no file of the user's. */
export const isMadeHere = computed(() => {
  const source = openedDrive.value?.source;
  return source?.kind === 'upload' && madeHere.value.some((made) => tokenOf(made) === source.token);
});

const tokenOf = (source: Source): string | undefined => (source.kind === 'upload' ? source.token : undefined);
