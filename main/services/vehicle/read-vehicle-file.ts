import type { Result } from '../../../geo/result.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { readVehicle } from '../../../geo/vehicle/read-vehicle.ts';
import { readDocumentFile } from '../files/read-document-file.ts';

const CARD_MAX_BYTES = 1_000_000;

/** Reads one vehicle card from its file. */
export async function readVehicleFile(path: string): Promise<Result<VehicleCard>> {
  const text = await readDocumentFile(path, 'vehicle card', CARD_MAX_BYTES);
  return text.ok ? readVehicle(text.value, path) : text;
}
