import { type KeptDay, keptDay } from '../../../geo/day/kept-day.ts';
import { given } from '../../../geo/given.ts';
import type { DriveBody } from '../../../geo/library/body/drive.ts';
import type { LoadList } from '../../../geo/load/list/load-list.ts';
import { weigh } from '../../../geo/load/weigh/weigh.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import type { CheckRequest } from '../check-drive.ts';
import { loadOf } from '../handed/known-of.ts';
import type { Library } from '../library/library.ts';

/** A vehicle of the fleet, as a column of the grid has it. */
export interface VehicleTaken {
  /** of its item in the library */
  readonly id: string;
  /** in the fleet */
  readonly vehicleId: string;
  readonly card: VehicleCard;
  /** several where it was changed in two places */
  readonly versions: readonly unknown[];
}

/** What of a check the library has. */
type Pair = Pick<
  CheckRequest,
  | 'routePath'
  | 'routeSha256'
  | 'routeName'
  | 'track'
  | 'card'
  | 'load'
  | 'leaveAt'
  | 'day'
  | 'uncounted'
  | 'mapPaths'
>;

/** A drive with its kept leave time and day, and a vehicle with what the library has aboard it, on the shelf's maps. */
export function pairOfLibrary(library: Library, drive: DriveBody, vehicle: VehicleTaken): Pair {
  const { gpx, file, track, leaveAt, plan } = drive;
  const kept: Partial<KeptDay> = plan === undefined ? {} : keptDay(plan);
  const aboard = aboardOf(library, vehicle);
  const uncounted = [kept.unread, aboard.unread].filter((say) => say !== undefined);
  return {
    routePath: library.pathOf('gpx', gpx),
    routeSha256: gpx,
    routeName: file,
    track,
    card: vehicle.card,
    mapPaths: [],
    uncounted,
    ...given({ leaveAt, load: aboard.load, day: kept.day }),
  };
}

/** What is listed as aboard; a list that cannot be worked out would leave the whole drive unchecked. */
function aboardOf(
  library: Library,
  { vehicleId, card }: VehicleTaken,
): { readonly load?: LoadList['items']; readonly unread?: string } {
  const items = loadOf(library, vehicleId) ?? [];
  if (items.length === 0) return {};
  const weighed = weigh(card, items);
  return weighed.ok
    ? { load: items }
    : { unread: `What is listed as aboard is not counted in: ${weighed.error.message}` };
}
