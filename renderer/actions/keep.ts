import type { FleetVehicle } from '../../main/contract/fleet.ts';
import type { Settings } from '../../main/contract/settings.ts';
import { ask } from '../host/ask.ts';
import { notice } from '../state/happening.ts';
import { description, settings, vehicles } from '../state/kept.ts';
import { inLine } from './in-line.ts';

const settingsLine = inLine();
const fleetLine = inLine();

/** Shows at once, then keeps; what cannot be kept is said, still holds in this window, and can be tried again. */
export async function saveSettings(changed: Settings): Promise<void> {
  settings.value = changed;
  await settingsLine(sendSettings);
}

/** Keeps what nobody has chosen: where that fails it costs the next start its memory, and nothing is said. */
export function keepQuietly(part: Partial<Settings>): Promise<void> {
  return settingsLine(async () => {
    const now = description.peek();
    if (!now) return;
    const reply = await ask('saveSettings', { settings: { ...now.settings, ...part }, known: now.settings });
    if (!reply.ok) return;
    description.value = { ...now, settings: reply.value.settings };
    settings.value = { ...settings.peek(), ...part };
  });
}

async function sendSettings(): Promise<void> {
  const sent = settings.peek();
  const known = description.peek();
  const reply = await ask('saveSettings', { settings: sent, ...(known ? { known: known.settings } : {}) });
  if (!reply.ok) {
    const say = `What you chose holds in this window but is not kept. ${reply.error.message}`;
    notice.value = { kind: 'error', say, again: () => void settingsLine(sendSettings) };
    return;
  }
  const kept = reply.value.settings;
  const now = description.peek();
  if (now) description.value = { ...now, settings: kept };
  settings.value = withChoices(kept, sent, settings.peek());
  if (reply.value.say.length > 0) notice.value = { kind: 'note', say: reply.value.say.join(' ') };
}

/** What is kept, with what was chosen here while it was written. */
function withChoices(kept: Settings, sent: Settings, chosen: Settings): Settings {
  const since = Object.entries(chosen).filter(([name, value]) => value !== sent[name as keyof Settings]);
  return { ...kept, ...Object.fromEntries(since) };
}

/** Either what another window had saved meanwhile, in sentences, or why the fleet could not be kept. */
export type FleetKept = { readonly say: readonly string[] } | { readonly problem: string };

/**
 * Keeps a change of the fleet; what is kept then is what the window shows.
 * @param change what is to become of the fleet as it is when its turn comes
 */
export function saveVehicles(
  change: (fleet: readonly FleetVehicle[]) => readonly FleetVehicle[],
): Promise<FleetKept> {
  return fleetLine(async () => {
    const known = [...vehicles.peek()];
    const reply = await ask('saveVehicles', { vehicles: [...change(known)], known });
    if (!reply.ok) return { problem: reply.error.message };
    vehicles.value = reply.value.vehicles;
    return { say: reply.value.say };
  });
}

/** Takes a file off the list of those opened before. */
export async function forgetRecent(id: string): Promise<void> {
  const reply = await ask('forgetRecent', { id });
  const known = description.peek();
  if (reply.ok && known) description.value = { ...known, recents: reply.value.recents };
  if (!reply.ok) notice.value = { kind: 'error', say: reply.error.message };
}
