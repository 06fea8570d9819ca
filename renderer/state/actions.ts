import { given } from '../../geo/given.ts';
import type { FleetVehicle } from '../../main/contract/fleet.ts';
import type { Settings } from '../../main/contract/settings.ts';
import { ask } from './host.ts';
import { openWanted } from './opening.ts';
import { wantedSample } from './start.ts';
import {
  cursorM,
  description,
  findings,
  leaveAt,
  message,
  openedDrive,
  selectedId,
  settings,
  vehicleId,
  vehicles,
} from './state.ts';

export { openFiles, openWanted } from './opening.ts';

/** One of the drives that come with the program, on their own map. */
export function openSample(id: string): Promise<void> {
  const sample = description.peek()?.sample;
  return sample ? openWanted(wantedSample(sample, id)) : Promise.resolve();
}

/** A file opened before. */
export function openRecent(id: string, use: 'drive' | 'map'): Promise<void> {
  const source = { kind: 'recent', id } as const;
  if (use === 'drive') return openWanted({ drive: { source } });
  const about = openedDrive.peek()?.source;
  return openWanted({ map: { source, ...given({ about }) } });
}

export async function forgetRecent(id: string): Promise<void> {
  const reply = await ask('forgetRecent', { id });
  const known = description.peek();
  if (reply.ok && known) description.value = { ...known, recents: reply.value.recents };
  if (!reply.ok) sayError(reply.error.message);
}

/** Another track or route of the same file. @param track 1-based place in the list */
export function chooseTrack(track: number): Promise<void> {
  const drive = openedDrive.peek();
  return drive ? openWanted({ drive: { source: drive.source, track } }) : Promise.resolve();
}

export function chooseVehicle(id: string): void {
  vehicleId.value = id;
  void saveSettings({ ...settings.peek(), vehicleId: id });
}

/** @param text as the field gives it; what is no time of this age counts as none */
export function chooseLeaveAt(text: string): void {
  const year = Number(text.slice(0, 4));
  const usable = /^\d{4}-\d\d-\d\dT\d\d:\d\d$/.test(text) && year >= 1990 && year <= 2100;
  leaveAt.value = usable ? text : undefined;
}

/** Shows at once, then keeps; what cannot be kept is said and still holds until the window closes. */
export async function saveSettings(changed: Settings): Promise<void> {
  settings.value = changed;
  const reply = await ask('saveSettings', { settings: changed });
  if (!reply.ok) sayError(reply.error.message);
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

/** Opens a finding, and puts the cursor there; undefined closes it. */
export function select(id: string | undefined): void {
  selectedId.value = id;
  const found = findings.peek().find((finding) => finding.id === id);
  if (found) cursorM.value = found.fromM;
}

export function putMessageAway(): void {
  message.value = undefined;
}

function sayError(say: string): void {
  message.value = { kind: 'error', say };
}
