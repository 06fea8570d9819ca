import { signal } from '@preact/signals';
import { dialog } from './page.ts';

/** The number of the kept sheet that is to be shown; undefined where the open drive is to be handed over. */
export const sheetWanted = signal<string | undefined>(undefined);

/** Hands over the open drive with the vehicle chosen, or shows a kept sheet. @param number of the kept one */
export function showSheet(number?: string): void {
  sheetWanted.value = number;
  dialog.value = 'handover';
}
