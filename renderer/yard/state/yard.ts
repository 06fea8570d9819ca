import { computed, signal } from '@preact/signals';
import { largest } from '../../../geo/lists.ts';
import { distanceIn, type Units } from '../../../geo/units/in-units.ts';
import { type Arrangement, arrange, followedM } from '../../../geo/yard/arrange.ts';
import type { Yard, YardCell, YardDrive, YardVehicle } from '../../../main/contract/yard/yard.ts';
import type { Doing } from '../../state/happening.ts';

/** What lies in the library, as it was last looked at; a sentence where it could not be. */
export const yard = signal<Yard | { readonly problem: string } | undefined>(undefined);

/** Its drives and vehicles; none while they are not known. */
export const drives = computed<readonly YardDrive[]>(() => lists.value?.drives ?? []);
export const columns = computed(() => lists.value?.vehicles ?? []);
export const bin = computed(() => lists.value?.bin ?? []);
/** What was changed in two places at once. */
export const apart = computed(() => lists.value?.apart ?? []);
/** The ids of those. */
export const apartIds = computed(() => new Set(apart.value.map(({ id }) => id)));
const lists = computed(() => (yard.value && 'drives' in yard.value ? yard.value : undefined));

/** What is known of each drive, by vehicle: another map where something of it has changed. Whoever shows it looks at `cellsTold` too. */
const cells = new Map<string, ReadonlyMap<string, YardCell>>();
/** Drives that could not be checked, and why. */
const failed = new Map<string, string>();
/** Counts each time that cells have come. */
export const cellsTold = signal(0);

export function cellsOf(drive: string): ReadonlyMap<string, YardCell> {
  return cells.get(drive) ?? NONE;
}
const NONE: ReadonlyMap<string, YardCell> = new Map();

interface CellLists {
  readonly all: readonly YardCell[];
  readonly stopped: readonly YardCell[];
}
const cellLists = new WeakMap<ReadonlyMap<string, YardCell>, CellLists>();

/** Both lists are made as cells come, of a few drives at a time. */
function cellListsOf(drive: string): CellLists {
  const known = cellsOf(drive);
  let lists = cellLists.get(known);
  if (lists === undefined) {
    const all = [...known.values()];
    lists = { all, stopped: all.filter(({ cell }) => cell.stops.length > 0) };
    cellLists.set(known, lists);
  }
  return lists;
}

/** The same as a list, and the same list as long as nothing has changed: thousands are gone through at a keystroke. */
export function cellListOf(drive: string): readonly YardCell[] {
  return cellListsOf(drive).all;
}

/** Those of them that a place stops, likewise. */
export function stoppedListOf(drive: string): readonly YardCell[] {
  return cellListsOf(drive).stopped;
}

type Long = Pick<YardDrive, 'id' | 'lengthM'>;

/** Metres along the roads it follows, once it was checked; until then between its points. */
export function lengthOf({ id, lengthM }: Long): number {
  return followedM(cellListOf(id)) ?? lengthM;
}

/** The same in words, which tell the one from the other. */
export function sayLength(drive: Long, units: Units): string {
  const asDrawn = followedM(cellListOf(drive.id)) === undefined;
  return `${distanceIn(units, lengthOf(drive))}${asDrawn ? ' as drawn' : ''}`;
}

export function whyFailed(drive: string): string | undefined {
  return failed.get(drive);
}

export function keepCells(told: readonly YardCell[]): void {
  const changed = new Map<string, Map<string, YardCell>>();
  for (const cell of told) {
    const row = changed.get(cell.drive) ?? new Map(cells.get(cell.drive));
    row.set(cell.vehicle, cell);
    changed.set(cell.drive, row);
    failed.delete(cell.drive);
  }
  for (const [drive, row] of changed) cells.set(drive, row);
  tellSoon();
}

export function keepFailed(drive: string, say: string): void {
  failed.set(drive, say);
  tellSoon();
}

/** All cells are told anew. */
export function forgetCells(): void {
  cells.clear();
  failed.clear();
  tellSoon();
}

/** Hundreds of cells a second are drawn a few times a second. */
const TELL_EVERY_MS = 150;
let waiting = false;

function tellSoon(): void {
  if (waiting) return;
  waiting = true;
  setTimeout(() => {
    waiting = false;
    cellsTold.value++;
  }, TELL_EVERY_MS);
}

/** Which drives are asked for, and in which order. */
export const arrangement = signal<Arrangement>({ text: '', takes: 'any', order: 'name' });

/** The rows. */
export const rows = computed<readonly YardDrive[]>(() => {
  const asked = arrangement.value;
  const byCells =
    asked.order !== 'name' ||
    (asked.shortestM ?? asked.longestM) !== undefined ||
    asked.takes !== 'any' ||
    asked.text !== '' ||
    asked.stoppedAt !== undefined;
  if (byCells) void cellsTold.value;
  return arrange(drives.value, cellListOf, asked);
});

/** The longest of all drives, metres: ribbons are drawn against it. */
export const longestM = computed(() => {
  void cellsTold.value;
  return largest(drives.value.map(lengthOf));
});

/** How many pairs were never checked, are old, or are otherwise than somebody has seen them. */
export const standing = computed(() => {
  void cellsTold.value;
  const sum = { missing: 0, stale: 0, changed: 0 };
  for (const { id } of drives.value) {
    const row = standingOf(cellsOf(id), columns.value);
    sum.missing += row.missing;
    sum.stale += row.stale;
    sum.changed += row.changed;
  }
  return sum;
});

interface Standing {
  readonly across: readonly YardVehicle[];
  readonly missing: number;
  readonly stale: number;
  readonly changed: number;
}
const standings = new WeakMap<ReadonlyMap<string, YardCell>, Standing>();

/** Counted once for a row, until something of it changes. */
function standingOf(known: ReadonlyMap<string, YardCell>, across: readonly YardVehicle[]): Standing {
  const before = standings.get(known);
  if (before?.across === across) return before;
  let [missing, stale, changed] = [0, 0, 0];
  for (const { id } of across) {
    const cell = known.get(id);
    if (cell === undefined) missing++;
    else if (cell.stale.length > 0) stale++;
    if (cell && cell.changes.length > 0) changed++;
  }
  const counted = { across, missing, stale, changed };
  standings.set(known, counted);
  return counted;
}

/** What stands beside the grid. */
export type Aside =
  | { readonly kind: 'drive'; readonly id: string }
  | { readonly kind: 'changes' }
  | { readonly kind: 'places' }
  | { readonly kind: 'out' }
  | { readonly kind: 'apart' }
  | { readonly kind: 'bin' };
export const aside = signal<Aside | undefined>(undefined);

/** Work under way on the grid: it goes on while another view is shown. */
export const yardWork = signal<Doing | undefined>(undefined);

/** What became of the last work, a sentence or several. */
export const yardSays = signal<{ readonly say: string; readonly problem: boolean } | undefined>(undefined);

/** Of whoever acknowledges, as last typed. */
export const initials = signal('');
