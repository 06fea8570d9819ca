import { computed, signal } from '@preact/signals';
import {
  readYard,
  withoutMeasured,
  type YardDraft,
  type YardLength,
  yardDraftOf,
} from '../../../geo/swing/yard/read-yard.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { saveVehicles } from '../../actions/keep.ts';
import { settings, vehicle } from '../../state/kept.ts';

/** What is typed off the sheet, by vehicle, until it is kept. */
const typed = signal<Readonly<Record<string, YardDraft>>>({});
/** What became of the last thing done, and for which vehicle. */
const done = signal<
  { readonly id: string; readonly kind: 'done' | 'fault'; readonly text: string } | undefined
>(undefined);

export const yardDraft = computed(() => {
  const of = vehicle.value;
  return of && (typed.value[of.id] ?? yardDraftOf(of.card, settings.value.units));
});
export const yardRead = computed(() => {
  const [of, draft] = [vehicle.value, yardDraft.value];
  return of && draft && readYard(draft, of.card, new Date().toISOString().slice(0, 10));
});
export const yardSaid = computed(() => (done.value?.id === vehicle.value?.id ? done.value : undefined));

export function typeYard(change: Partial<YardDraft>): void {
  const [of, draft] = [vehicle.peek(), yardDraft.peek()];
  if (!of || !draft) return;
  done.value = undefined;
  typed.value = { ...typed.peek(), [of.id]: { ...draft, ...change } };
}

/** Puts what was measured on the card; the drive is checked with it. */
export async function keepMeasured(): Promise<void> {
  const card = yardRead.peek()?.card;
  if (card) await keep(card, 'On the card. The drive is checked with it.');
}

/** Takes it off the card again; what is typed stays. */
export async function forgetMeasured(): Promise<void> {
  const of = vehicle.peek();
  if (of) await keep(withoutMeasured(of.card), 'Off the card. What you typed is still here.');
}

async function keep(card: VehicleCard, text: string): Promise<void> {
  const [of, draft] = [vehicle.peek(), yardDraft.peek()];
  if (!of || !draft) return;
  const { id } = of;
  typed.value = { ...typed.peek(), [id]: draft };
  const kept = await saveVehicles((fleet) => fleet.map((each) => (each.id === id ? { id, card } : each)));
  done.value =
    'problem' in kept
      ? { id, kind: 'fault', text: kept.problem }
      : { id, kind: 'done', text: [text, ...kept.say].join(' ') };
}

export function typeYardLength(name: YardLength, text: string): void {
  const draft = yardDraft.peek();
  if (draft) typeYard({ text: { ...draft.text, [name]: text } });
}
