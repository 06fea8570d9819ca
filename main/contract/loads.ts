import { z } from 'zod';
import { loadListSchema } from '../../geo/load/list/load-list.ts';
import { vehicleIdSchema } from './fleet.ts';
import { LOADS_MAX } from './limits.ts';

const items = loadListSchema.shape.items;

/** What was last put aboard one vehicle of the fleet. */
export const vehicleLoadSchema = z.strictObject({ vehicleId: vehicleIdSchema, items });
export type VehicleLoad = z.infer<typeof vehicleLoadSchema>;

/** The kept loads' file, format `lanegauge.loads` version 1: one list a vehicle. */
export const loadsFileSchema = z.strictObject({
  format: z.literal('lanegauge.loads'),
  version: z.literal(1),
  loads: z
    .array(vehicleLoadSchema)
    .max(LOADS_MAX)
    .refine((loads) => new Set(loads.map(({ vehicleId }) => vehicleId)).size === loads.length, {
      message: 'two loads are of the same vehicle',
    }),
});

/** A load to look at first, with the vehicle it was made for. */
export const sampleLoadSchema = z.strictObject({ name: z.string(), vehicleId: vehicleIdSchema, items });
