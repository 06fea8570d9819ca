import { join } from 'node:path';
import type { FleetVehicle } from '../contract/fleet.ts';
import type { Settings } from '../contract/settings.ts';
import { makeFolders } from './files/make-folders.ts';
import { sweepPassing } from './files/passing-files.ts';
import type { Store } from './files/store.ts';
import { messageOf } from './files/system-error.ts';
import { openFleet } from './fleet/fleet-store.ts';
import { readSampleFleet } from './fleet/sample-fleet.ts';
import type { Library } from './library/library.ts';
import { openLibraryPlace } from './library/library-place.ts';
import { openLibrary } from './library/open-library.ts';
import { type LoadsStore, openLoads } from './loads/loads-store.ts';
import { moveIn } from './moved-in/move-in.ts';
import { openRecents, type Recents } from './recents/recents-store.ts';
import { openSettings } from './settings/settings-store.ts';

/** Everything that is kept for the user, read from the data folder. */
export interface Stores {
  readonly settings: Store<Settings>;
  readonly fleet: Store<readonly FleetVehicle[]>;
  readonly loads: LoadsStore;
  readonly recents: Recents;
  /** where the fleet and the loads are kept, drives and local notes too */
  readonly library: Library;
  /** Moves the drives opened last into the library, once, and throws away what has lain in its bin for long. */
  moveDrives(): Promise<void>;
  /** what could not be read as it was, one sentence each */
  notices(): readonly string[];
  /** Looks at what lies there now: another program may have saved. */
  refresh(): Promise<void>;
}

/** @param sampleVehicles folder with the vehicles that a fleet begins with */
export async function openStores(
  dataFolder: string,
  sampleVehicles: string,
  now: () => Date,
): Promise<Stores> {
  const sampleFleet = await readSampleFleet(sampleVehicles);
  const noFolder = await whyNoFolder(dataFolder);
  for (const folder of [dataFolder, join(dataFolder, 'copies')]) await sweepPassing(folder, now().getTime());
  const [settings, recents, place] = await Promise.all([
    openSettings(dataFolder, now),
    openRecents(dataFolder, now),
    openLibraryPlace(dataFolder, now),
  ]);
  const library = await openLibrary({ folder: place.folder(), dataFolder, now });
  const moved = await moveIn(dataFolder, library, now);
  const fleet = openFleet(library, moved.vehicles ?? sampleFleet.vehicles);
  const nameOf = (vehicleId: string) => fleet.current().find(({ id }) => id === vehicleId)?.card.name;
  const loads = openLoads({ folder: dataFolder, library, first: moved.loads, nameOf });
  const all = [settings, fleet, loads, recents];
  const told = [place, library, ...all];
  return {
    settings,
    fleet,
    loads,
    recents,
    library,
    async moveDrives() {
      await moved.moveDrives(recents);
      await library.sweep();
    },
    notices: () => [
      ...noFolder,
      ...sampleFleet.notices,
      ...moved.notices,
      ...told.flatMap((each) => [...each.notices()]),
    ],
    async refresh() {
      await Promise.all(all.map((each) => each.refresh()));
    },
  };
}

/** Told at the start, before the user has changed anything that could then not be kept. */
async function whyNoFolder(folder: string): Promise<string[]> {
  try {
    await makeFolders(folder);
    return [];
  } catch (error) {
    return [
      `Nothing that you change can be kept: the folder ${folder} could not be made (${messageOf(error)}). Make it, or name another in LANEGAUGE_HOME, and start again.`,
    ];
  }
}
