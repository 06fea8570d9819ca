import { batch, computed, signal } from '@preact/signals';
import { loadWithDoubts } from '../../../geo/load/doubts/load-with-doubts.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { loadCardOf, type ReadyCard } from '../../../geo/load/weigh/load-card.ts';
import { vehicle } from '../../state/kept.ts';
import { aboard, loads } from '../../state/loads.ts';
import { saveSoon } from './save-soon.ts';

type Items = readonly LoadItem[];

/** What was aboard before each change, and what was taken back. */
interface History {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  /** changes of one kind in a row are one step: a slider drawn, an arrow held, a figure typed */
  readonly merging: string | undefined;
}
interface Step {
  readonly items: Items;
  /** what the change did, in words */
  readonly did: string;
}

const STEPS_KEPT = 200;
const NO_HISTORY: History = { past: [], future: [], merging: undefined };
const histories = signal<Readonly<Record<string, History>>>({});
const history = computed(() => histories.value[vehicle.value?.id ?? ''] ?? NO_HISTORY);

/** An item in the hand: shown where it is held, put down when it is let go. */
export const held = signal<{ readonly index: number; readonly item: LoadItem } | undefined>(undefined);
/** The item that drawing and table point at. */
export const pointedAt = signal<number | undefined>(undefined);
/** What is asked about and not aboard yet. */
export const asked = signal<Items>([]);

/** Aboard, with what is in the hand where it is held now. */
export const shown = computed<Items>(() => {
  const hand = held.value;
  return hand ? aboard.value.map((item, i) => (i === hand.index ? hand.item : item)) : aboard.value;
});

/** The chosen vehicle's card with its empty weight, estimated where nobody weighed it; undefined without a vehicle. */
export const loadCard = computed<ReadyCard | undefined>(() => {
  const card = vehicle.value?.card;
  const ready = card && loadCardOf(card, { guess: true });
  return ready?.ok ? ready.value : undefined;
});

/** The chosen vehicle as loaded now; undefined without a vehicle. */
export const weighed = computed(() => {
  const card = loadCard.value;
  return card && loadWithDoubts(card, shown.value);
});

export const undoes = computed(() => history.value.past.at(-1)?.did);
export const redoes = computed(() => history.value.future.at(-1)?.did);

/**
 * Changes what is aboard the chosen vehicle.
 * @param did what the change did, in words, for undo
 * @param merging changes in a row under the same word are one step
 */
export function change(items: Items, did: string, merging?: string): void {
  const before = history.peek();
  const goesOn = merging !== undefined && merging === before.merging;
  const past = goesOn ? before.past : [...before.past, { items: aboard.peek(), did }].slice(-STEPS_KEPT);
  lay(items, { past, future: [], merging });
}

/** The next change of the same kind is a step of its own. */
export function endStep(): void {
  const id = vehicle.peek()?.id;
  if (id !== undefined && history.peek().merging !== undefined)
    histories.value = { ...histories.peek(), [id]: { ...history.peek(), merging: undefined } };
}

export function undo(): void {
  const { past, future } = history.peek();
  const last = past.at(-1);
  if (last)
    lay(last.items, {
      past: past.slice(0, -1),
      future: [...future, { items: aboard.peek(), did: last.did }],
      merging: undefined,
    });
}

export function redo(): void {
  const { past, future } = history.peek();
  const next = future.at(-1);
  if (next)
    lay(next.items, {
      past: [...past, { items: aboard.peek(), did: next.did }],
      future: future.slice(0, -1),
      merging: undefined,
    });
}

function lay(items: Items, next: History): void {
  const id = vehicle.peek()?.id;
  if (id === undefined) return;
  batch(() => {
    loads.value = { ...loads.peek(), [id]: items };
    histories.value = { ...histories.peek(), [id]: next };
    held.value = undefined;
    const at = pointedAt.peek();
    if (at !== undefined && at >= items.length) pointedAt.value = undefined;
  });
  saveSoon(id);
}

/** Another item in the place of one. */
export function replace(index: number, item: LoadItem, did: string, merging?: string): void {
  change(
    aboard.peek().map((each, i) => (i === index ? item : each)),
    did,
    merging,
  );
}

export function remove(index: number): void {
  const gone = aboard.peek()[index];
  if (!gone) return;
  change(
    aboard.peek().filter((_, i) => i !== index),
    `took off ${gone.name}`,
  );
}
