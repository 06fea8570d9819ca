import { ask } from '../../host/ask.ts';
import { notice } from '../../state/happening.ts';
import { loads } from '../../state/loads.ts';

/** A slider drawn writes once it rests. */
const REST_MS = 400;

const waiting = new Map<string, ReturnType<typeof setTimeout>>();

/** Keeps what is aboard a vehicle as soon as the hand rests. */
export function keepSoon(vehicleId: string): void {
  clearTimeout(waiting.get(vehicleId));
  waiting.set(
    vehicleId,
    setTimeout(() => void keep(vehicleId), REST_MS),
  );
}

/** Keeps at once what still waits: the page is about to go. */
export function keepNow(): void {
  for (const id of [...waiting.keys()]) void keep(id);
}

async function keep(vehicleId: string): Promise<void> {
  clearTimeout(waiting.get(vehicleId));
  waiting.delete(vehicleId);
  const items = [...(loads.peek()[vehicleId] ?? [])];
  const reply = await ask('saveLoad', { vehicleId, load: { format: 'lanegauge.load', version: 1, items } });
  if (!reply.ok) notice.value = { kind: 'error', say: `What is aboard is not kept. ${reply.error.message}` };
}
