import { signal } from '@preact/signals';
import type { LocalNote } from '../../geo/notes/note.ts';
import type { KeptNote } from '../../main/contract/note-calls.ts';

/** The local notes that are kept; undefined before the host has told them. */
export const keptNotes = signal<readonly KeptNote[] | undefined>(undefined);

/** Goes up with every change made here: what was checked before counts no more. */
export const notesChanged = signal(0);

/** A note as it is written, new or kept. */
export interface NoteDraft {
  /** what it was made from, for a change of one that is kept */
  readonly of?: Pick<KeptNote, 'id' | 'heads' | 'others'>;
  readonly fields: Partial<LocalNote> & Pick<LocalNote, 'at'>;
  /** the place in words */
  readonly where: string;
  /** the figure that is asked for first */
  readonly asks?: 'height' | 'width' | 'mass';
  /** leave to drive there is asked for */
  readonly asksLeave?: boolean;
  /** of the way that the drive goes there */
  readonly drivenDeg?: number;
}

/** The note that is being written. */
export const noteDraft = signal<NoteDraft | undefined>(undefined);

/** A click on the map says where a new note belongs. */
export const noting = signal(false);
