import { keptDay } from '../../../geo/day/kept-day.ts';
import { given } from '../../../geo/given.ts';
import { ok, type Result } from '../../../geo/result.ts';
import type { CheckRequest } from '../../services/check-drive.ts';
import type { Library } from '../../services/library/library.ts';
import { findItem, refuseTwoVersions } from '../yard/find-item.ts';

/** What of a check is taken from the library, and the id of the vehicle there. */
interface Taken {
  readonly vehicleId: string;
  readonly request: Pick<
    CheckRequest,
    'routePath' | 'routeSha256' | 'routeName' | 'track' | 'card' | 'leaveAt' | 'day'
  >;
}

/** A drive of the library with its kept leave time and day, and a vehicle of the fleet. */
export function fromLibrary(
  library: Library,
  named: { readonly drive: string; readonly vehicle: string },
): Result<Taken> {
  const drive = findItem(library, 'drive', named.drive);
  if (!drive.ok) return drive;
  const vehicle = findItem(library, 'vehicle', named.vehicle);
  if (!vehicle.ok) return vehicle;
  for (const item of [drive.value, vehicle.value]) {
    const one = refuseTwoVersions(item);
    if (!one.ok) return one;
  }
  const [body, card] = [drive.value.versions[0]!.body, vehicle.value.versions[0]!.body.card];
  const { gpx, file, track, leaveAt, plan } = body;
  return ok({
    vehicleId: vehicle.value.id,
    request: {
      routePath: library.pathOf('gpx', gpx),
      routeSha256: gpx,
      routeName: file,
      track,
      card,
      ...given({ leaveAt, day: plan && keptDay(plan) }),
    },
  });
}
