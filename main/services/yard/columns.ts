import type { Item } from '../../../geo/library/item.ts';
import { itemOfVehicle } from '../../../geo/library/record-name.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import type { FleetVehicle } from '../../contract/fleet.ts';
import { sha256Of } from '../files/sha256.ts';
import { fleetEntries } from '../fleet/fleet-entries.ts';
import type { Library } from '../library/library.ts';

/** A column of the grid. */
export interface Column {
  /** of its item in the library */
  readonly id: string;
  readonly vehicleId: string;
  readonly card: VehicleCard;
  readonly versions: Item<'vehicle'>['versions'];
}

/**
 * The vehicles in the order of the fleet; one that was changed in two places stands there once, as in the first of them.
 * @param fleet what the fleet begins with, as long as no vehicle of it is in the library
 */
export function columnsOf(library: Library, fleet: readonly FleetVehicle[] = []): Column[] {
  const columns = new Map<string, Column>();
  for (const { itemId, vehicle } of fleetEntries(library.list('vehicle')))
    if (!columns.has(itemId))
      columns.set(itemId, {
        id: itemId,
        vehicleId: vehicle.id,
        card: vehicle.card,
        versions: library.find('vehicle', itemId)?.versions ?? [],
      });
  if (columns.size > 0) return [...columns.values()];
  return fleet.map(({ id: vehicleId, card }) => ({
    id: itemOfVehicle('vehicle', vehicleId, sha256Of),
    vehicleId,
    card,
    versions: [],
  }));
}
