import type { FleetVehicle } from '../../main/contract/fleet.ts';
import type { Settings } from '../../main/contract/settings.ts';
import { ask } from '../host/ask.ts';
import { notice } from '../state/happening.ts';
import { description, settings, vehicles } from '../state/kept.ts';

/** Shows at once, then keeps; what cannot be kept is said and still holds until the window closes. */
export async function saveSettings(changed: Settings): Promise<void> {
  settings.value = changed;
  const reply = await ask('saveSettings', { settings: changed });
  if (!reply.ok) notice.value = { kind: 'error', say: reply.error.message };
}

/**
 * Keeps the fleet; on success it is what the window shows.
 * @returns a sentence when it could not be kept
 */
export async function saveVehicles(changed: readonly FleetVehicle[]): Promise<string | undefined> {
  const reply = await ask('saveVehicles', { vehicles: [...changed] });
  if (!reply.ok) return reply.error.message;
  vehicles.value = reply.value.vehicles;
  return undefined;
}

/** Takes a file off the list of those opened before. */
export async function forgetRecent(id: string): Promise<void> {
  const reply = await ask('forgetRecent', { id });
  const known = description.peek();
  if (reply.ok && known) description.value = { ...known, recents: reply.value.recents };
  if (!reply.ok) notice.value = { kind: 'error', say: reply.error.message };
}
