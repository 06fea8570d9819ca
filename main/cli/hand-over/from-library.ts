import type { Item } from '../../../geo/library/item.ts';
import { ok, type Result } from '../../../geo/result.ts';
import type { ToHand } from '../../services/hand-over/hand-over-many.ts';
import { itemsNamed } from '../../services/library/find-item.ts';
import type { Library } from '../../services/library/library.ts';
import type { NamedOfLibrary } from './hand-over-arguments.ts';

/** Each drive named with each vehicle named, by drive, and each pair named; what is named twice counts once. */
export function fromLibrary(library: Library, named: NamedOfLibrary): Result<ToHand[]> {
  const each = everyPair(library, named);
  if (!each.ok) return each;
  const found = new Map(each.value.map((pair) => [`${pair.drive.id} ${pair.vehicle.id}`, pair]));
  for (const { drive, vehicle } of named.pairs) {
    const pairs = everyPair(library, { drives: [drive], vehicles: [vehicle] });
    if (!pairs.ok) return pairs;
    for (const pair of pairs.value) found.set(`${pair.drive.id} ${pair.vehicle.id}`, pair);
  }
  return ok([...found.values()]);
}

function everyPair(library: Library, named: Pick<NamedOfLibrary, 'drives' | 'vehicles'>): Result<ToHand[]> {
  const drives = itemsNamed(library, 'drive', named.drives);
  if (!drives.ok) return drives;
  const vehicles = itemsNamed(library, 'vehicle', named.vehicles);
  if (!vehicles.ok) return vehicles;
  return ok(drives.value.flatMap((drive) => vehicles.value.map((vehicle) => pairOf(drive, vehicle))));
}

function pairOf(drive: Item<'drive'>, { id, versions }: Item<'vehicle'>): ToHand {
  const { vehicleId, card } = versions[0]!.body;
  return { drive, vehicle: { id, vehicleId, card, versions } };
}
