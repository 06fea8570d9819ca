import type { Result } from '../../../geo/result.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { readVehicle } from '../../../geo/vehicle/read-vehicle.ts';
import { readBytes } from '../files/read-bytes.ts';

const CARD_MAX_BYTES = 1_000_000;

/** Reads one vehicle card from its file. */
export async function readVehicleFile(path: string): Promise<Result<VehicleCard>> {
  const bytes = await readBytes(path, 'vehicle card', CARD_MAX_BYTES);
  if (!bytes.ok) return bytes;
  return readVehicle(new TextDecoder().decode(bytes.value), path);
}
