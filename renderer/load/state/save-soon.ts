import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { ask } from '../../host/ask.ts';
import { notice } from '../../state/happening.ts';
import { description } from '../../state/kept.ts';
import { loads } from '../../state/loads.ts';

/** A slider drawn writes once it rests. */
const REST_MS = 400;

type Items = readonly LoadItem[];

const waiting = new Map<string, ReturnType<typeof setTimeout>>();
/** what is being written */
const sent = new Map<string, Items>();
/** what could not be kept; it is tried again with the next change, at the user's word, and when the page goes */
const unsaved = new Set<string>();

/** Saves what is aboard a vehicle as soon as the hand rests. */
export function saveSoon(vehicleId: string): void {
  clearTimeout(waiting.get(vehicleId));
  waiting.set(
    vehicleId,
    // one after the other: each is told what it was made from
    setTimeout(() => (sent.has(vehicleId) ? saveSoon(vehicleId) : void save(vehicleId)), REST_MS),
  );
}

/** Saves at once what still waits: the page is about to go. */
export function saveNow(): void {
  for (const id of new Set([...waiting.keys(), ...unsaved])) void save(id);
}

async function save(vehicleId: string): Promise<void> {
  clearTimeout(waiting.get(vehicleId));
  waiting.delete(vehicleId);
  const items = itemsOf(vehicleId);
  const known = sent.get(vehicleId) ?? keptOf(vehicleId);
  sent.set(vehicleId, items);
  const reply = await ask('saveLoad', { vehicleId, load: asList(items), known: asList(known) });
  if (sent.get(vehicleId) === items) sent.delete(vehicleId);
  if (!reply.ok) {
    unsaved.add(vehicleId);
    const say = `What is aboard stays in this window but is not kept. ${reply.error.message}`;
    notice.value = { kind: 'error', say, again: () => void save(vehicleId) };
    return;
  }
  unsaved.delete(vehicleId);
  takeKept(vehicleId, reply.value.items);
  if (itemsOf(vehicleId) === items) loads.value = { ...loads.peek(), [vehicleId]: reply.value.items };
  if (reply.value.say.length > 0) notice.value = { kind: 'note', say: reply.value.say.join(' ') };
}

const NOTHING: Items = [];

function itemsOf(vehicleId: string): Items {
  return loads.peek()[vehicleId] ?? NOTHING;
}

/** What this page knows to be kept. */
function keptOf(vehicleId: string): Items {
  return description.peek()?.loads.find((each) => each.vehicleId === vehicleId)?.items ?? NOTHING;
}

function takeKept(vehicleId: string, items: Items): void {
  const known = description.peek();
  if (!known) return;
  const others = known.loads.filter((each) => each.vehicleId !== vehicleId);
  description.value = { ...known, loads: [...others, { vehicleId, items: [...items] }] };
}

function asList(items: Items) {
  return { format: 'lanegauge.load' as const, version: 1 as const, items: [...items] };
}
