import { isDeepStrictEqual } from 'node:util';
import { given } from '../../../geo/given.ts';
import { driveId, itemOfVehicle } from '../../../geo/library/record-name.ts';
import type { LoadList } from '../../../geo/load/list/load-list.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import type { HandedOf } from '../../../geo/yard/handed/facts.ts';
import { numberReplaced, type OutSheet } from '../../../geo/yard/handed/out-now.ts';
import { sha256Of } from '../files/sha256.ts';
import type { Library } from '../library/library.ts';
import { backDays } from './back.ts';
import { handedSheets } from './handed-sheets.ts';

/** What the library knows about a drive's file and a vehicle, as plain data that a thread can be handed. */
export interface KnownOf {
  /** ids of the drives that this file is */
  readonly drives: readonly string[];
  readonly vehicle?: string;
  /** what the library has aboard the vehicle */
  readonly load?: LoadList['items'];
  /** sheets of this file's drives handed out before */
  readonly sheets: readonly OutSheet[];
  /** numbers of sheets whose vehicle is back: nothing takes their place */
  readonly back?: readonly string[];
}

/**
 * @param gpx SHA-256 of the drive's file; undefined where it is not known yet: then all there is of the vehicle
 * @param card of a vehicle, or the vehicle's id in the library
 */
export function knownOf(
  library: Pick<Library, 'list' | 'find'>,
  gpx: string | undefined,
  card: VehicleCard | string | undefined,
): KnownOf {
  const vehicles = library.list('vehicle');
  const found = vehicles.find(({ id, versions }) =>
    typeof card === 'string' ? id === card : versions.some(({ body }) => isDeepStrictEqual(body.card, card)),
  );
  const vehicleId = found?.versions[0]?.body.vehicleId;
  return {
    drives: library
      .list('drive')
      .filter(({ versions }) => gpx === undefined || versions.some(({ body }) => body.gpx === gpx))
      .map(({ id }) => id),
    sheets: handedSheets(library).filter(({ body }) =>
      gpx === undefined ? body.vehicle === found?.id : body.gpx === gpx,
    ),
    back: [...backDays(library).keys()],
    ...given({ vehicle: found?.id, load: vehicleId === undefined ? undefined : loadOf(library, vehicleId) }),
  };
}

/** What the library has aboard a vehicle; undefined where it has nothing. @param vehicleId its id in the fleet */
export function loadOf(library: Pick<Library, 'find'>, vehicleId: string): LoadList['items'] | undefined {
  return library.find('load', itemOfVehicle('load', vehicleId, sha256Of))?.versions[0]?.body.items;
}

/** Where a handing-over's drive, vehicle and load come from. */
export function handedOf(
  known: KnownOf,
  {
    gpx,
    track,
    vehicleName,
    load,
  }: {
    readonly gpx: string;
    readonly track: number;
    readonly vehicleName: string;
    readonly load: LoadList['items'] | undefined;
  },
): HandedOf {
  const { vehicle } = known;
  const drive = driveId(gpx, track);
  const last = numberReplaced(known.sheets, { gpx, track, vehicleName, ...given({ vehicle }) });
  const replaces = last !== undefined && known.back?.includes(last) ? undefined : last;
  const loadKept = load !== undefined && isDeepStrictEqual(load, known.load);
  return {
    gpx,
    track,
    ...(known.drives.includes(drive) && { drive }),
    ...(loadKept && { loadKept }),
    ...given({ vehicle, replaces }),
  };
}
