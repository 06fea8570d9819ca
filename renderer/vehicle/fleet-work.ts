import { signal } from '@preact/signals';
import { clip, listed, quote } from '../../geo/units/text.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import { type Draft, EMPTY_DRAFT } from '../../geo/vehicle/form/draft.ts';
import { FIELDS } from '../../geo/vehicle/form/fields.ts';
import { type ReadDraft, readDraft } from '../../geo/vehicle/form/read-draft.ts';
import { freeName, isSameName } from '../../geo/vehicle/free-name.ts';
import type { FleetVehicle } from '../../main/contract/fleet.ts';
import { chooseVehicle } from '../actions/choose.ts';
import { saveVehicles } from '../actions/keep.ts';
import { vehicle, vehicles } from '../state/kept.ts';
import { importCard } from './card-file.ts';

/** What is typed and not kept yet, by vehicle: it outlives another choice and the closed dialog. */
export const drafts = signal<Readonly<Record<string, Draft>>>({});
/** The new card being written; it is no vehicle until it is saved. */
export const freshId = signal<string | undefined>(undefined);
/** The new card is in the form, in place of the chosen vehicle. */
export const writingFresh = signal(false);
/** What the last action did, or why it could not. */
export const said = signal<{ readonly kind: 'done' | 'fault'; readonly text: string } | undefined>(undefined);
/** Once the cards are closed, what was said of them is over. */
export function forgetSaid(): void {
  said.value = undefined;
}
/** A vehicle that was deleted, and where it stood. */
export interface Deleted {
  readonly vehicle: FleetVehicle;
  readonly place: number;
}
/** Every vehicle deleted since the window was opened, the last one first: each can be brought back. */
export const deleted = signal<readonly Deleted[]>([]);

export function type(id: string, draft: Draft): void {
  said.value = undefined;
  drafts.value = { ...drafts.value, [id]: draft };
}

export function undoChanges(id: string): void {
  said.value = undefined;
  dropDraft(id);
  if (id === freshId.value) forgetFresh();
}

function dropDraft(id: string): void {
  drafts.value = Object.fromEntries(Object.entries(drafts.value).filter(([each]) => each !== id));
}

/** Begins a new card, or goes on with the one begun. */
export function writeFresh(): void {
  if (freshId.value === undefined) {
    freshId.value = crypto.randomUUID();
    type(freshId.value, EMPTY_DRAFT);
  }
  writingFresh.value = true;
  said.value = {
    kind: 'done',
    text: 'A new card. It joins the fleet once its sizes and plates are in and it is kept.',
  };
}

/** Puts a vehicle of the fleet into the form. */
export function look(id: string): void {
  said.value = undefined;
  writingFresh.value = false;
  chooseVehicle(id);
}

function forgetFresh(): void {
  freshId.value = undefined;
  writingFresh.value = false;
}

type Fleet = readonly FleetVehicle[];

/** Saves what is typed for a vehicle. @returns whether its figures make a card and the host took it */
export async function saveDraft(id: string): Promise<boolean> {
  const draft = drafts.value[id];
  if (draft === undefined) {
    said.value = { kind: 'done', text: 'Nothing was changed.' };
    return true;
  }
  const { card, faults } = readDraft(draft);
  if (card === undefined) {
    said.value = { kind: 'fault', text: sayFaulty(faults) };
    return false;
  }
  if (vehicles.value.some((each) => each.id !== id && isSameName(each.card.name, card.name))) {
    said.value = {
      kind: 'fault',
      text: `Another vehicle of the fleet is called ${quote(card.name, 60)}: give this one a name of its own.`,
    };
    return false;
  }
  const fresh = id === freshId.value;
  const withCard = (fleet: Fleet) =>
    fresh ? [...fleet, { id, card }] : fleet.map((each) => (each.id === id ? { id, card } : each));
  if (!(await saveFleet(withCard, 'Kept. The drive is checked with it.'))) return false;
  // typed on while it was written
  if (drafts.value[id] === draft) dropDraft(id);
  if (fresh) {
    forgetFresh();
    chooseVehicle(id);
  }
  return true;
}

export async function addCard(card: VehicleCard, done: string): Promise<boolean> {
  const id = crypto.randomUUID();
  const name = freeName(
    card.name,
    vehicles.value.map((each) => each.card.name),
  );
  const renamed =
    name === card.name
      ? ''
      : ` Another vehicle has its name, so this one is called ${quote(name, 60)}: rename or delete the one you do not want.`;
  const saved = await saveFleet((fleet) => [...fleet, { id, card: { ...card, name } }], `${done}${renamed}`);
  if (saved) {
    writingFresh.value = false;
    chooseVehicle(id);
  }
  return saved;
}

export async function addFromFile(file: File): Promise<void> {
  const card = await importCard(file);
  if (card.ok) await addCard(card.value, `${clip(file.name, 80)} is in the fleet.`);
  else said.value = { kind: 'fault', text: card.error.message };
}

export async function deleteChosen(): Promise<boolean> {
  const chosen = vehicle.value;
  if (chosen === undefined) return false;
  const place = vehicles.value.findIndex(({ id }) => id === chosen.id);
  const without = (fleet: Fleet) => fleet.filter(({ id }) => id !== chosen.id);
  if (!(await saveFleet(without, `${chosen.card.name} is off the fleet.`))) return false;
  const left = vehicles.value;
  if (left.some(({ id }) => id === chosen.id)) {
    said.value = { kind: 'fault', text: sayStays(chosen.card.name) };
    return false;
  }
  deleted.value = [{ vehicle: chosen, place }, ...deleted.peek()];
  const next = left[Math.min(place, left.length - 1)];
  if (next) chooseVehicle(next.id);
  return true;
}

/** Puts a deleted vehicle back where it stood; whatever was saved since stays. */
export async function undoDelete(back: Deleted): Promise<boolean> {
  const withIt = (fleet: Fleet) => fleet.toSpliced(back.place, 0, back.vehicle);
  if (!(await saveFleet(withIt, `${back.vehicle.card.name} is back.`))) return false;
  deleted.value = deleted.peek().filter((each) => each !== back);
  chooseVehicle(back.vehicle.id);
  return true;
}

/** On a refusal the fleet, what is typed and what can be undone stay as they were. */
async function saveFleet(change: (fleet: Fleet) => Fleet, done: string): Promise<boolean> {
  const kept = await saveVehicles(change);
  if ('problem' in kept) {
    said.value = { kind: 'fault', text: kept.problem };
    return false;
  }
  said.value = { kind: 'done', text: [done, ...kept.say].join(' ') };
  return true;
}

/** Which figures are missing or wrong, by their labels. */
function sayFaulty(faults: ReadDraft['faults']): string {
  const labels = FIELDS.filter(({ key }) => faults[key] !== undefined).map(({ label }) => label);
  const names = [...(faults.name === undefined ? [] : ['Name']), ...labels];
  return names.length === 0
    ? 'Something among the places for the load is missing or wrong; it is marked.'
    : `Missing or wrong: ${listed(names)}.`;
}

function sayStays(name: string): string {
  return `${name} was not deleted: it was changed in another window meanwhile. Look at it, and delete it again if it should go.`;
}
