import { ask } from '../../host/ask.ts';
import { notice } from '../../state/happening.ts';
import { loads } from '../../state/loads.ts';

/** A slider drawn writes once it rests. */
const REST_MS = 400;

const waiting = new Map<string, ReturnType<typeof setTimeout>>();

/** Saves what is aboard a vehicle as soon as the hand rests. */
export function saveSoon(vehicleId: string): void {
  clearTimeout(waiting.get(vehicleId));
  waiting.set(
    vehicleId,
    setTimeout(() => void save(vehicleId), REST_MS),
  );
}

/** Saves at once what still waits: the page is about to go. */
export function saveNow(): void {
  for (const id of [...waiting.keys()]) void save(id);
}

async function save(vehicleId: string): Promise<void> {
  clearTimeout(waiting.get(vehicleId));
  waiting.delete(vehicleId);
  const items = [...(loads.peek()[vehicleId] ?? [])];
  const reply = await ask('saveLoad', { vehicleId, load: { format: 'lanegauge.load', version: 1, items } });
  if (!reply.ok)
    notice.value = { kind: 'error', say: `What is aboard could not be saved. ${reply.error.message}` };
}
