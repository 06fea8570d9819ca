import { fail, ok } from '../../../geo/result.ts';
import { type FleetVehicle, fleetFileSchema, fleetVehicleSchema } from '../../contract/fleet.ts';
import { FLEET_MAX } from '../../contract/limits.ts';
import { rememberedFile } from '../files/remembered-file.ts';
import { memberOf, salvageList } from '../files/salvage-list.ts';
import type { Store } from '../files/store.ts';
import { mergeFleet } from './merge-fleet.ts';

/**
 * Reads the fleet, or starts with the given vehicles (written only once the user saves).
 * @param first what a fleet without a file holds
 */
export async function openFleet(
  folder: string,
  first: readonly FleetVehicle[],
  now: () => Date,
): Promise<Store<readonly FleetVehicle[]>> {
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
  const current = () => file.last()?.vehicles ?? first;
  return {
    current,
    notices: file.notices,
    refresh: file.refresh,
    async save(vehicles, known = current()) {
      let say: readonly string[] = [];
      const updated = await file.update((found) => {
        const merged = mergeFleet({ known, mine: vehicles, theirs: found?.vehicles ?? known });
        if (merged.vehicles.length > FLEET_MAX)
          return fail('too-many', sayTooMany(merged.vehicles.length, vehicles.length));
        say = merged.say;
        return ok({ format: 'lanegauge.fleet', version: 1, vehicles: [...merged.vehicles] });
      });
      if (!updated.ok) return updated;
      return ok({ value: updated.value.value.vehicles, say: [...updated.value.notices, ...say] });
    },
  };
}

function sayTooMany(count: number, mine: number): string {
  const why = count > mine ? ' with what another window has added' : '';
  return `The fleet was not saved: it would have ${count} vehicles${why}, and can have ${FLEET_MAX}. Delete some first.`;
}
