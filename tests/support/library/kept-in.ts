import { join } from 'node:path';
import type { FleetVehicle } from '../../../main/contract/fleet.ts';
import { openFleet } from '../../../main/services/fleet/fleet-store.ts';
import { openLibrary } from '../../../main/services/library/open-library.ts';
import { openLoads } from '../../../main/services/loads/loads-store.ts';
import { moveIn } from '../../../main/services/moved-in/move-in.ts';

type Clock = () => Date;

/** The library in a data folder, with what was kept there before it. */
async function libraryIn(folder: string, now: Clock) {
  const library = await openLibrary({ folder: join(folder, 'library'), dataFolder: folder, now });
  return { library, moved: await moveIn(folder, library, now) };
}

/** The fleet of a data folder, as a program that has just been started opens it. */
export async function fleetIn(folder: string, first: readonly FleetVehicle[], now: Clock) {
  const { library, moved } = await libraryIn(folder, now);
  const fleet = openFleet(library, moved.vehicles ?? first);
  return { ...fleet, notices: () => [...moved.notices, ...library.notices(), ...fleet.notices()] };
}

/** Its loads, likewise. */
export async function loadsIn(folder: string, now: Clock, nameOf: (id: string) => string | undefined) {
  const { library, moved } = await libraryIn(folder, now);
  const loads = openLoads({ folder, library, first: moved.loads, nameOf });
  return { ...loads, notices: () => [...moved.notices, ...library.notices(), ...loads.notices()] };
}
