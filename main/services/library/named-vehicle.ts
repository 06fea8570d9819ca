import { fail, ok, type Result } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { readVehicleFile } from '../vehicle/read-vehicle-file.ts';
import { findItem, refuseTwoVersions } from './find-item.ts';
import type { Library } from './library.ts';
import { openLibraryPlace } from './library-place.ts';
import type { YardNamed } from './local-notes.ts';
import { openLibrary } from './open-library.ts';
import { isName, type TypedVehicle } from './typed-vehicle.ts';

export interface NamedVehicle {
  readonly card: VehicleCard;
  /** in the library; absent where its card was read from a file */
  readonly id?: string;
}

/** A vehicle by the file of its card, or by its id or name in a library: the file where there is one. */
export async function namedVehicle(
  asked: TypedVehicle,
  library: () => Promise<Library>,
): Promise<Result<NamedVehicle>> {
  const { typed, path } = asked;
  const fleet = isName(asked) ? await library() : undefined;
  if (fleet === undefined || fleet.list('vehicle').length === 0) {
    const card = await readVehicleFile(path);
    return card.ok ? ok({ card: card.value }) : card;
  }
  const found = findItem(fleet, 'vehicle', typed);
  if (!found.ok)
    return found.error.code === 'library.none'
      ? fail(
          'missing',
          `${quote(typed, 200)} is neither the file of a vehicle card nor a vehicle of the library in ${fleet.folder}. See 'lanegauge yard list' for its vehicles.`,
        )
      : found;
  const single = refuseTwoVersions(found.value);
  if (!single.ok) return single;
  const { id, versions } = found.value;
  const body = versions[0]?.body;
  return body === undefined
    ? fail('library.none', `There is no vehicle ${id} any more. See 'lanegauge yard list' for what there is.`)
    : ok({ card: body.card, id });
}

/** The library that is named, or else this computer's. */
export async function libraryNamed({ dataFolder, folder }: YardNamed, now: () => Date): Promise<Library> {
  const place = folder ?? (await openLibraryPlace(dataFolder, now)).folder();
  return openLibrary({ folder: place, dataFolder, now });
}
