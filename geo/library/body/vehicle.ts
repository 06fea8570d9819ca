import { z } from 'zod';
import { loadListSchema } from '../../load/list/load-list.ts';
import { vehicleCardSchema } from '../../vehicle/card.ts';

const vehicleId = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/);

/** A vehicle of the fleet: its card under an id that outlives a renaming. */
export const vehicleBodySchema = z.looseObject({
  vehicleId,
  card: vehicleCardSchema,
  /** its place among the vehicles: smaller first */
  rank: z.number().optional(),
});
export type VehicleBody = z.infer<typeof vehicleBodySchema>;

/** What is aboard one vehicle, which may be in no fleet just now. */
export const loadBodySchema = z.looseObject({ vehicleId, items: loadListSchema.shape.items });
