import { signal } from '@preact/signals';
import { dialog } from './page.ts';

/** The number of the kept sheet that is to be shown; undefined where the open drive is to be handed over. */
export const sheetWanted = signal<string | undefined>(undefined);

/** Hands over the open drive with the vehicle chosen, or shows a kept sheet. @param number of the kept one */
export function showSheet(number?: string): void {
  sheetWanted.value = number;
  dialog.value = 'handover';
}

/** A drive of the library and a vehicle of the fleet, with what they are called. */
export interface NamedPair {
  readonly drive: string;
  readonly vehicle: string;
  readonly driveName: string;
  readonly vehicleName: string;
}

/** What is to be handed over from the library. */
export const pairsWanted = signal<readonly NamedPair[]>([]);

/** Hands over drives of the library, one or several, each with a vehicle. */
export function handOverPairs(pairs: readonly NamedPair[]): void {
  pairsWanted.value = pairs;
  dialog.value = 'hand-over-pairs';
}
