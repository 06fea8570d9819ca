import type { FleetVehicle } from '../contract/fleet.ts';
import type { Settings } from '../contract/settings.ts';
import type { Store } from './files/store.ts';
import { openFleet } from './fleet/fleet-store.ts';
import { readSampleFleet } from './fleet/sample-fleet.ts';
import { type LoadsStore, openLoads } from './loads/loads-store.ts';
import { openRecents, type Recents } from './recents/recents-store.ts';
import { openSettings } from './settings/settings-store.ts';

/** Everything that is kept for the user, read from the data folder. */
export interface Stores {
  readonly settings: Store<Settings>;
  readonly fleet: Store<readonly FleetVehicle[]>;
  readonly loads: LoadsStore;
  readonly recents: Recents;
  /** what could not be read as it was, one sentence each */
  readonly notices: readonly string[];
}

/** @param sampleVehicles folder with the vehicles that a fleet begins with */
export async function openStores(
  dataFolder: string,
  sampleVehicles: string,
  now: () => Date,
): Promise<Stores> {
  const sampleFleet = await readSampleFleet(sampleVehicles);
  const [settings, fleet, recents] = await Promise.all([
    openSettings(dataFolder, now),
    openFleet(dataFolder, sampleFleet.vehicles, now),
    openRecents(dataFolder, now),
  ]);
  const loads = await openLoads(dataFolder, fleet.current(), now);
  const notices = [sampleFleet, settings, fleet, loads, recents].flatMap((each) => [...each.notices]);
  return { settings, fleet, loads, recents, notices };
}
