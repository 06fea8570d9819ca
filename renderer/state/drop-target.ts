import { signal } from '@preact/signals';

/** Who takes what is dropped while it is shown, in place of the window: files, and names of folders among them. */
export interface DropTarget {
  /** what may be dropped */
  readonly say: string;
  take(files: readonly File[], folders: readonly string[]): void;
}

export const dropTarget = signal<DropTarget | undefined>(undefined);
