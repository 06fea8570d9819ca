import { type FleetVehicle, fleetFileSchema, fleetVehicleSchema } from '../../contract/fleet.ts';
import { FLEET_MAX, LOADS_MAX } from '../../contract/limits.ts';
import { loadsFileSchema, type VehicleLoad, vehicleLoadSchema } from '../../contract/loads.ts';
import { rememberedFile } from '../files/remembered-file.ts';
import { memberOf, salvageList } from '../files/salvage-list.ts';

/** What a file of before held: undefined where there is none. */
export interface Former<T> {
  readonly value?: T;
  /** sentences about what was wrong with it */
  readonly notices: readonly string[];
}

/** The fleet as it was kept before there was a library. */
export async function formerFleet(folder: string, now: () => Date): Promise<Former<readonly FleetVehicle[]>> {
  const file = await rememberedFile({
    folder,
    name: 'fleet.json',
    what: 'list of vehicles',
    schema: fleetFileSchema,
    salvage: salvageList({
      schema: fleetFileSchema,
      key: 'vehicles',
      item: fleetVehicleSchema,
      most: FLEET_MAX,
      idOf: ({ id }) => id,
      nameOf: (item) => memberOf(memberOf(item, 'card'), 'name'),
    }),
    now,
  });
  const value = file.last()?.vehicles;
  return { ...(value ? { value } : {}), notices: file.notices() };
}

/** The loads, likewise. @param nameOf a vehicle's name */
export async function formerLoads(
  folder: string,
  now: () => Date,
  nameOf: (vehicleId: string) => string | undefined,
): Promise<Former<readonly VehicleLoad[]>> {
  const file = await rememberedFile({
    folder,
    name: 'loads.json',
    what: 'list of loads',
    schema: loadsFileSchema,
    salvage: salvageList({
      schema: loadsFileSchema,
      key: 'loads',
      item: vehicleLoadSchema,
      most: LOADS_MAX,
      idOf: ({ vehicleId }) => vehicleId,
      nameOf: (item) => nameOf(String(memberOf(item, 'vehicleId'))),
    }),
    now,
  });
  const value = file.last()?.loads;
  return { ...(value ? { value } : {}), notices: file.notices() };
}
