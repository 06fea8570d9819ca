import { signal } from '@preact/signals';

export type DialogName =
  | 'open'
  | 'vehicles'
  | 'settings'
  | 'help'
  | 'rules'
  | 'drives'
  | 'shelf'
  | 'fetch'
  | 'handover'
  | 'hand-over-pairs'
  | 'note'
  | 'notes';

/** The one dialog that is open. */
export const dialog = signal<DialogName | undefined>(undefined);
/** A file is held over the window. */
export const dropping = signal(false);
