import { computed, signal } from '@preact/signals';
import { PAIRS_MOST } from '../../../main/contract/hand-over/pairs-most.ts';
import type { YardDrive, YardVehicle } from '../../../main/contract/yard/yard.ts';
import { handOverPairs, type NamedPair } from '../../state/sheet-wanted.ts';
import { columns, drives } from '../state/yard.ts';

/** Cells are being chosen, to be handed over together. */
export const marking = signal(false);

const marks = signal<ReadonlySet<string>>(new Set());

const keyOf = (drive: string, vehicle: string) => `${drive} ${vehicle}`;

export function isMarked(drive: string, vehicle: string): boolean {
  return marks.value.has(keyOf(drive, vehicle));
}

/** Marks cells, or takes the marks of all of them away where each has one. */
export function mark(of: readonly Pick<YardDrive, 'id'>[], with_: readonly Pick<YardVehicle, 'id'>[]): void {
  const keys = of.flatMap((drive) => with_.map((vehicle) => keyOf(drive.id, vehicle.id)));
  const now = new Set(marks.peek());
  const all = keys.every((key) => now.has(key));
  for (const key of keys)
    if (all) now.delete(key);
    else now.add(key);
  marks.value = now;
}

/** What is marked and still there, by drive. */
export const markedPairs = computed<readonly NamedPair[]>(() => {
  const chosen = marks.value;
  if (chosen.size === 0) return [];
  return drives.value.flatMap((drive) =>
    columns.value
      .filter((vehicle) => chosen.has(keyOf(drive.id, vehicle.id)))
      .map((vehicle) => pairOf(drive, vehicle)),
  );
});

export function pairOf(drive: YardDrive, vehicle: YardVehicle): NamedPair {
  return { drive: drive.id, vehicle: vehicle.id, driveName: drive.name, vehicleName: vehicle.name };
}

/** Hands over what is marked; the choice is done with. */
export function handOverMarked(): void {
  const pairs = markedPairs.peek().slice(0, PAIRS_MOST);
  if (pairs.length === 0) return;
  endMarking();
  handOverPairs(pairs);
}

export function endMarking(): void {
  marking.value = false;
  marks.value = new Set();
}
