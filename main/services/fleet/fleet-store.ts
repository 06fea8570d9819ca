import { type FleetVehicle, fleetFileSchema } from '../../contract/fleet.ts';
import { keptFile } from '../files/kept-file.ts';
import type { Store } from '../files/store.ts';

/**
 * Reads the fleet, or starts with the given vehicles (written only once the user saves).
 * @param first what a fleet without a file holds
 */
export async function openFleet(
  folder: string,
  first: readonly FleetVehicle[],
  now: () => Date,
): Promise<Store<readonly FleetVehicle[]>> {
  const file = keptFile({
    folder,
    name: 'fleet.json',
    what: 'list of vehicles',
    schema: fleetFileSchema,
    now,
  });
  const { value, notices } = await file.read();
  let current: readonly FleetVehicle[] = value?.vehicles ?? first;
  return {
    notices,
    current: () => current,
    async save(vehicles) {
      const written = await file.write({ format: 'lanegauge.fleet', version: 1, vehicles: [...vehicles] });
      if (!written.ok) return written;
      current = vehicles;
      return { ok: true, value: vehicles };
    },
  };
}
