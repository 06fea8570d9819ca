import { ok, type Result } from '../../../geo/result.ts';
import type { ToHand } from '../../services/hand-over/hand-over-many.ts';
import { itemsNamed } from '../../services/library/find-item.ts';
import type { Library } from '../../services/library/library.ts';

/** Each drive named with each vehicle named, by drive; what is named twice counts once. */
export function fromLibrary(
  library: Library,
  named: { readonly drives: readonly string[]; readonly vehicles: readonly string[] },
): Result<ToHand[]> {
  const drives = itemsNamed(library, 'drive', named.drives);
  if (!drives.ok) return drives;
  const vehicles = itemsNamed(library, 'vehicle', named.vehicles);
  if (!vehicles.ok) return vehicles;
  return ok(
    drives.value.flatMap((drive) =>
      vehicles.value.map(({ id, versions }) => {
        const { vehicleId, card } = versions[0]!.body;
        return { drive, vehicle: { id, vehicleId, card, versions } };
      }),
    ),
  );
}
