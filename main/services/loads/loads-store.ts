import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import type { Result } from '../../../geo/result.ts';
import { loadsFileSchema, type VehicleLoad } from '../../contract/loads.ts';
import { keptFile } from '../files/kept-file.ts';

/** What is aboard each vehicle, kept between sessions. */
export interface LoadsStore {
  current(): readonly VehicleLoad[];
  /** An empty list is no load. Lists of vehicles that have left the fleet go with the next start. */
  save(vehicleId: string, items: readonly LoadItem[]): Promise<Result<unknown>>;
  /** sentences about what was wrong with the file when it was read */
  readonly notices: readonly string[];
}

/** @param fleet the vehicles there are: a list of another is of no use any more */
export async function openLoads(
  folder: string,
  fleet: readonly { readonly id: string }[],
  now: () => Date,
): Promise<LoadsStore> {
  const file = keptFile({
    folder,
    name: 'loads.json',
    what: 'list of loads',
    schema: loadsFileSchema,
    now,
  });
  const { value, notices } = await file.read();
  let current = (value?.loads ?? []).filter(({ vehicleId }) => fleet.some(({ id }) => id === vehicleId));
  return {
    notices,
    current: () => current,
    save(vehicleId, items) {
      const others = current.filter((each) => each.vehicleId !== vehicleId);
      // at once: the list of another vehicle may be saved before this one is written
      current = items.length === 0 ? others : [...others, { vehicleId, items: [...items] }];
      return file.write({ format: 'lanegauge.loads', version: 1, loads: current });
    },
  };
}
